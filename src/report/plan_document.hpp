#pragma once

#include "operations/held_work.hpp"
#include "report/document.hpp"

namespace beadbook {

/// The coupons to weld, what each is for and how it is examined; what no coupon covers, and why.
Document document_of(const PlanResult &plan);
/// The same after what the welder holds by the work's rules, and how that stands.
Document document_of(const HeldWork &work);

} // namespace beadbook
