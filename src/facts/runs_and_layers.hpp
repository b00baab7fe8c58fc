#pragma once

#include "facts/coupon_record.hpp"

namespace beadbook {

/// Runs that are not of the layers of the coupon: single of more than one, multi of one alone; with them, as
/// "runs sl, layers 3". Of several processes each has its own, or the sum is held against what all of them
/// must have. Empty: they go together, or nobody can say.
std::string runs_of_other_layers(const CouponRecord &coupon);

/// Fewer layers than processes, each of which welded one at least: "process GTAW + SMAW, layers 1"; empty as
/// above.
std::string layers_under_processes(const CouponRecord &coupon);

} // namespace beadbook
