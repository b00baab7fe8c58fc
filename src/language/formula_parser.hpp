#pragma once

#include "language/condition.hpp"
#include "measure/parse.hpp"

#include <map>
#include <memory>

namespace beadbook {

/// The names that formulas of one criteria set may use beside the built-in words.
struct Names {
    std::map<std::string, Quantity> symbols;                    ///< T -> thinner member
    std::map<std::string, Formula> formulas;                    ///< named formulas
    std::map<std::string, std::shared_ptr<const Table>> tables; ///< `table NAME`
    /// `limit of RULE` in the class being read; filled by the loader.
    std::map<std::string, Formula> limits;
};

/// Grammar (blanks separate words; every operation is dimension-checked):
///   formula   = term { (+ | -) term }
///   term      = factor { (x | *) factor | / factor }
///   factor    = NUMBER [UNIT] | SYMBOL | NAME | ( formula )
///             | lesser of formula and formula {and formula} | greater of ...
///             | table NAME | limit of RULE
///   condition = FACT is WORD {or WORD} | formula {edge}
///   edge      = (over | from | at least | under | below | to | up to | at most) formula
/// Throws InputError with the column of the mistake.
Formula parse_formula(const std::string &text, const Names &names);
Condition parse_condition(const std::string &text, const Names &names);
/// Edges that may be formulas, as in a range that a test qualifies: `from 0.67 x T to 4 x T`.
std::vector<Condition::Edge> parse_range(const std::string &text, const Names &names, Dimension dimension);
/// The edges alone, as in a table's row: `over 1/8 in to 3/16 in`.
std::vector<Table::Edge> parse_band(const std::string &text, const Names &names, Dimension dimension);

} // namespace beadbook
