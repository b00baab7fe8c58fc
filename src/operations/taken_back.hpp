#pragma once

#include "operations/office.hpp"
#include "records/taken_back.hpp"

namespace beadbook {

struct Turned;

/// What was taken back of a coupon, and of what was moved to another one, what became of it there.
std::vector<TakenBack> taken_back(Office &office, const CouponRecord &coupon);
/// The same by the coupon's turns (operations/turned.hpp), which cost verdicts, where they are at hand.
std::vector<TakenBack> taken_back(Office &office, const CouponRecord &coupon,
                                  const std::vector<Turned> &turns);

/// Of these what may have kept it from passing: no find that was corrected, no exam that was opened again or
/// found nothing, but where a reject went by that, or the exam counts only since.
std::vector<TakenBack> gone_of(Office &office, const CouponRecord &coupon);
/// The same of what was taken back and the turns at hand.
std::vector<TakenBack> gone_among(std::vector<TakenBack> all, const std::vector<Turned> &turns);

/// In few words, "#3 withdrawn"; what it was rejected as is told by its turns.
std::vector<std::string> taken_back_words(const std::vector<TakenBack> &all);

} // namespace beadbook
