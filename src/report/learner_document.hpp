#pragma once

#include "operations/learner.hpp"
#include "report/document.hpp"

namespace beadbook {

/// Everything for one learner: the coupons in a table, then each with its verdict and why, what to change,
/// grade and remarks.
Document document_of(const Learner &learner);
/// The same to be handed out on paper, as short as it goes: each map once, proofs by who examined, what the
/// set lacks and how sure they are, and no long sentence twice but the verdict.
Document handout_of(const Learner &learner);

} // namespace beadbook
