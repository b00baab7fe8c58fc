#pragma once

#include "qualify/range_rules.hpp"

#include <vector>

namespace beadbook {

/// One thing on the way to a qualification: a test of one kind that was graded, or training of the welder.
struct Attempt {
    enum class Kind : std::uint8_t { passed, failed, trained };
    Kind kind = Kind::passed;
    Day day;
    std::string coupon; ///< of a test
};

/// What the retest rules ask after these attempts, oldest first.
struct RetestState {
    int needed = 1;                  ///< passed coupons of this kind until the test counts
    std::vector<std::string> passed; ///< those that count so far
    Authority from;                  ///< of `needed`, if a test had failed
    std::string why;                 ///< "coupon T-3 failed on 2026-10-05, ..."; empty if none failed
    bool satisfied() const { return static_cast<int>(passed.size()) >= needed; }
};

/// Immediate retest: so many coupons for each that failed, and one more failure begins anew; after training:
/// the number for a full test. Rules that say nothing ask one coupon. When a test is satisfied the next
/// attempt begins a new one.
RetestState retest_state(const RetestRules &rules, const std::vector<Attempt> &attempts);

} // namespace beadbook
