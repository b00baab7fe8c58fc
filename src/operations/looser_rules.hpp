#pragma once

#include "qualify/range_rules.hpp"

namespace beadbook {

/// What rules for welders of one's own ask less than shipped ones of their name, their title, or most of
/// their ranges: coupons of a retest, renewal and training, examinations, how long it holds, by what a test
/// is accepted; and what they allow otherwise, wider or not. "looser than the shipped asme-ix: retest of 1
/// coupon, not 2"; one sentence for each, none of shipped rules.
std::vector<std::string> looser_rules_words(const RangeRules &own);

} // namespace beadbook
