#pragma once

#include "facts/coupon_record.hpp"

namespace beadbook {

/// Why what its processes are said to have deposited is more than the weld of a groove holds, one of them or
/// all together: the weld thickness, or where that is not told the thicker member. Empty: it is not, or
/// nobody can say. Common practice, no source.
std::string deposits_over_weld(const CouponRecord &coupon);

/// That they deposited less than the weld in sum, which leaves a part of it to nobody; empty as above.
std::string deposits_under_weld(const CouponRecord &coupon);

} // namespace beadbook
