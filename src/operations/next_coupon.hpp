#pragma once

#include "operations/office.hpp"

namespace beadbook {

/// What a person who registers one coupon after the other would say next.
struct NextCoupon {
    std::string mark;  ///< the next free one of the last coupon's series; empty if that is none
    CouponRecord like; ///< the last coupon, without who welded it, when, and its result
};
/// Empty if nothing is on record.
NextCoupon next_coupon(Office &office);

/// What a coupon says of its weld, without what is said of no other: who welded it, when, with which result.
CouponRecord weld_alone(CouponRecord coupon);

} // namespace beadbook
