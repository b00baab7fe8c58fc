#pragma once

#include "facts/coupon_record.hpp"

namespace beadbook {

// What a coupon says that no weld by its process has, as "transfer spray, process SMAW"; empty if nothing
// speaks against it, or nobody can say. Common practice, no source.

/// A transfer of the metal where none is told apart: of GMAW, FCAW and EGW it is.
std::string transfer_of_another_process(const CouponRecord &coupon);
/// SAW where its flux would fall off: neither flat nor horizontal.
std::string position_of_another_process(const CouponRecord &coupon);
/// A metal that its flux or flame spoils: titanium by SMAW, FCAW or OFW, magnesium by SMAW or FCAW.
std::string metal_of_another_process(const CouponRecord &coupon);

} // namespace beadbook
