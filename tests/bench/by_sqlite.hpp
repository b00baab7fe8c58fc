#pragma once

#include "pores_job.hpp"

namespace beadbook::bench {

/// The job as one query in SQLite: neighbours by a window function, the worst inch by a join of each coupon's
/// pores with the windows that begin or end at one of them. The rows lie in memory, with an index.
JobDone judge_by_sqlite(const std::vector<PoresOfCoupon> &coupons);

} // namespace beadbook::bench
