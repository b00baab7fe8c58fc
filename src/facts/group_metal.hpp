#pragma once

#include "facts/coupon_record.hpp"

namespace beadbook {

/// A metal group of the coupon that is of another metal than its material says ("P8" of steel, which are
/// stainless ones), with that material: "metal group P8, material steel"; empty if it is not, or nobody can
/// say. P-numbers are those of ASME BPVC Section IX QW-422, groups Ia to VI those of AWS D17.1, both from
/// memory; a group may be a metal's name too. No other groups are looked at.
std::string group_of_another_metal(const CouponRecord &coupon);

} // namespace beadbook
