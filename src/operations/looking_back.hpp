#pragma once

#include "operations/judging.hpp"

namespace beadbook {

/// Fills in what was taken back of the coupon, and which of that may have kept it from passing (`gone`), so
/// that no accept stands plain where a reject was made to go. Verdicts are taken for it only where its
/// history says something otherwise than before.
void look_back(Office &office, const CouponState &coupon, Judged &judged);

/// Judges a coupon, and looks back; a refusal is told in the result. Throws StoreError.
JudgedOrNot judge_looking_back(Office &office, const CouponState &coupon, const JudgeRequest &request = {});
/// The same without what was taken back, for who shows that beside it, or only asks whether there are
/// cautions.
JudgedOrNot judge_with_cautions(Office &office, const CouponState &coupon, const JudgeRequest &request = {});

/// What stands beside the accept of a coupon by its own criteria, in words: what was taken back, what is said
/// of the weld otherwise since it was examined, what was meant so in spite of a doubt, and what speaks
/// against its exams.
std::vector<std::string> beside_accept(Office &office, const CouponState &coupon);

} // namespace beadbook
