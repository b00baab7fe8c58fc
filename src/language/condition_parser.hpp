#pragma once

#include "language/condition.hpp"
#include "language/names.hpp"

namespace beadbook {

/// The one grammar of conditions, over whatever names the file has:
///   condition  = WORD is [not] VALUE {or VALUE}
///              | DAY not past | DAY within PERIOD
///              | formula edge {edge}
///   edge       = (over | from | at least | under | below | to | up to | at most) formula
/// `is not A or B` is neither of them. A listed value that begins with `not` is taken as the value: `letter B
/// is not seen`. Throws InputError with the column of the mistake.
Condition parse_condition(const std::string &text, const Names &names);
/// What follows the name in a condition, the `is` left out: `groove or plug`, `not tube`, `under 1 in`.
Condition parse_condition_on(const Name &subject, const std::string &rest, const Names &names);
/// `subject is A or B`, from its values.
Condition condition_of(const Name &subject, const std::vector<std::string> &words);

/// Edges that may be formulas, as in a range that a test qualifies: `from 0.67 x T to 4 x T`.
std::vector<Condition::Edge> parse_range(const std::string &text, const Names &names, Dimension dimension);
/// The edges alone, as in a table's row: `over 1/8 in to 3/16 in`.
std::vector<Table::Edge> parse_band(const std::string &text, const Names &names, Dimension dimension);

} // namespace beadbook
