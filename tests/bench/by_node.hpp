#pragma once

#include "pores_job.hpp"

#include <string>
#include <utility>

namespace beadbook::bench {

/// The job by rule engines that run in node (peers/peers.mjs), by name; `folder` holds that file and what npm
/// installed for it. Throws std::runtime_error: they did not run.
std::vector<std::pair<std::string, JobDone>> judge_by_node(const std::string &folder,
                                                           const std::vector<PoresOfCoupon> &coupons);

} // namespace beadbook::bench
