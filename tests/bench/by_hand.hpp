#pragma once

#include "pores_job.hpp"

namespace beadbook::bench {

/// The yardstick: this one table for this one job, written down by hand. It knows nothing of missing data,
/// exams, scope or proofs, and no other rule; it shows what the machine can do.
struct HandReason {
    enum class Rule : std::uint8_t { size, sum, gap };
    Rule rule = Rule::size;
    std::vector<int> pores;               ///< numbers, ascending
    std::int64_t from = 0, to = 0;        ///< where on the weld
    std::int64_t measured = 0, limit = 0; ///< nm
};
struct HandVerdict {
    bool rejected = false;
    std::vector<HandReason> reasons;
};

/// Verdicts alone: class k rejected as bit k.
unsigned judge_by_hand(const PoresOfCoupon &pores);
/// Verdicts with every reason, one a class.
std::vector<HandVerdict> judge_by_hand_with_reasons(const PoresOfCoupon &pores);

} // namespace beadbook::bench
