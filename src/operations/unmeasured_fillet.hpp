#pragma once

#include "criteria/model.hpp"
#include "facts/coupon_state.hpp"

#include <string>

namespace beadbook {

/// "nobody measured the size of the fillet (1/8 in on the drawing), and asme-b31.3 asks for no measurement of
/// it": of a fillet that is accepted so. Empty where somebody measured its size or throat, and of other
/// joints.
std::string unmeasured_fillet(const CriteriaSet &set, const CouponState &coupon);

} // namespace beadbook
