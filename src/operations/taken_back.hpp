#pragma once

#include "operations/office.hpp"
#include "records/taken_back.hpp"

namespace beadbook {

/// What was taken back of a coupon, and of what was moved to another one, what became of it there.
std::vector<TakenBack> taken_back(Office &office, const CouponRecord &coupon);

} // namespace beadbook
