#pragma once

#include "operations/learner.hpp"
#include "report/document.hpp"

namespace beadbook {

/// Everything for one learner: the coupons in a table, then each with its verdict and why, what to change,
/// grade and remarks.
Document document_of(const Learner &learner);

} // namespace beadbook
