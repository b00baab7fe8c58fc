#pragma once

#include "facts/coupon_record.hpp"

namespace beadbook {

// What a coupon says of the sides that it was welded from and that cannot hold beside what else it says, as
// "sides both, inside closed"; empty if nothing speaks against it, or nobody can say. Common practice, no
// source.

/// A backing whose word tells other sides than `sides` does: "bs", "DS MB", a gouged root are of both, "ss
/// mb" of one.
std::string backing_of_other_sides(const CouponRecord &coupon);
/// Welded from both sides, or gouged from the other, though the root side is closed.
std::string sides_of_closed(const CouponRecord &coupon);

} // namespace beadbook
