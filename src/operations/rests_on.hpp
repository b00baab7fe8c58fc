#pragma once

#include "facts/coupon_state.hpp"
#include "facts/welder_record.hpp"

namespace beadbook {

/// What a coupon that is to prove something of its welder rests on, as it stands now: its exams, its grade
/// and the verdict that this was given on.
Evidence rests_on(const CouponState &coupon);

} // namespace beadbook
