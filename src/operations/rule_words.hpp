#pragma once

#include "operations/office.hpp"
#include "qualify/range_rules.hpp"

#include <map>

namespace beadbook {

/// Traits that different rules call by different words, so that a coupon may need the words of one of them.
const std::vector<Trait> &rule_words();
/// Such words, by the coupon's field: {"metal-group", "P1"}.
using RuleWords = std::map<std::string, std::string>;

/// Words that only these rules use for what was welded. What the coupon says in words that the rules know is
/// not set aside here: that is refused.
void take_rule_words(CouponRecord &test, const RuleWords &words, const RangeRules &rules);

/// Those of a test as it was granted.
RuleWords words_of_test(const CouponRecord &test);
/// Those of them that the coupon does not contradict.
RuleWords words_beside(RuleWords words, const CouponRecord &coupon);

/// That a position which tells its progression by its name contradicts the one that is told; empty: it does
/// not.
std::string progression_contradicted(const std::string &position, const std::string &progression);

/// Whether a field of a coupon says what was welded.
bool describes_weld(std::string_view field);

} // namespace beadbook
