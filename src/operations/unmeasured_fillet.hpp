#pragma once

#include "criteria/model.hpp"
#include "facts/coupon_state.hpp"

#include <string>

namespace beadbook {

/// "nobody measured the size of the fillet (1/8 in on the drawing), and asme-b31.3 judges none": of a fillet
/// by criteria without a rule for its size or throat, which a technician could otherwise take for judged.
/// Empty where there is one, where somebody measured, and of other joints.
std::string unmeasured_fillet(const CriteriaSet &set, const CouponState &coupon);

} // namespace beadbook
