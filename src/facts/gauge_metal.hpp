#pragma once

#include "facts/coupon_record.hpp"

namespace beadbook {

/// A wall of the coupon that is called by a gauge of another metal than its own ("16 ga aluminium" of steel),
/// with that metal: "16 ga aluminium, material 4130 steel"; empty if none is, or one of them is not known.
std::string gauge_of_another_metal(const CouponRecord &coupon);

} // namespace beadbook
