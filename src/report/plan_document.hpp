#pragma once

#include "operations/planning.hpp"
#include "report/document.hpp"

namespace beadbook {

/// The coupons to weld, what each is for and how it is examined; what no coupon covers, and why.
Document document_of(const PlanResult &plan);

} // namespace beadbook
