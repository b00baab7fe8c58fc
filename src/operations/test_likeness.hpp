#pragma once

#include "qualify/range_rules.hpp"

#include <string>
#include <vector>

namespace beadbook {

/// Whether one process of a test is of the kind of a weld: the same process, joint, form and position, by
/// whatever words these are told. What only one of them tells, or tells by a word that nobody knows, is added
/// to `lacks`. Sheet and plate are one form where the rules take each for the other, or tell no forms apart.
Truth same_kind(const std::vector<Weld> &test, const Weld &weld, const RangeRules *rules,
                std::vector<std::string> &lacks);
/// The same, whatever the position.
Truth same_but_for_position(const std::vector<Weld> &test, const Weld &weld, const RangeRules *rules);

/// Whether a test qualifies for all that a failed one of another kind would have, by process, joint, form and
/// position, by whatever words that one told its position (5G, PH).
bool takes_in(const RangeRules &rules, const Weld &test, const Weld &failed);
bool takes_in(const RangeRules &rules, const Weld &test, const std::vector<Weld> &failed);

/// Positions that both would have qualified for, in work like the failed test or, after a tube that failed,
/// in work like a test on plate, but for those that every test does: told where a test does not take in all
/// of the failed one.
std::vector<std::string> takes_some(const RangeRules &rules, const Weld &test, const Weld &failed);

/// In what a weld of its kind is another test all the same: "metal group P1, not P8". A failure counts
/// against both, as what it showed is not known to lie in that; but what passed the one is no retest of the
/// other.
std::vector<std::string> welded_otherwise(const Weld &weld, const std::vector<Weld> &test);
/// Whether a weld is a retest of a test: of its kind, and not welded otherwise. All that counts, plans or
/// tells what passed after a failure asks this.
Truth retests(const std::vector<Weld> &test, const Weld &weld, const RangeRules *rules,
              std::vector<std::string> &lacks);

/// What is told of a weld otherwise than of the test, or not at all, but for sizes: "form plate, not tube".
std::vector<std::string> told_otherwise(const Weld &weld, const Weld &test);

} // namespace beadbook
