#pragma once

#include "judge/evaluation.hpp"

namespace beadbook {

/// Two rules that reject only together: where one exam finds both over, what each said counts; where either
/// is kept, neither does. Once every rule on the finds was judged.
void check_pairs(Evaluation &evaluation);

/// Rules that count how many others are at the borderline.
void check_combined(Evaluation &evaluation);

/// Rules on the coupon itself, whatever was found on it.
void check_coupon_rules(Evaluation &evaluation);

} // namespace beadbook
