#pragma once

#include "operations/evidence.hpp"

namespace beadbook {

/// What is told of coupons that count as a retest: training that made it ask less and was entered only after
/// it was welded, or is of the day on which that was welded; and sizes that are others than those of the test
/// that failed, by which it may be the easier one. One day for each coupon.
std::vector<std::string> retest_notes(const GradedTests &tests, const std::vector<Evidence> &all,
                                      const std::vector<Day> &welded);
/// The same of all processes of one coupon.
std::vector<std::string> retest_notes(const GradedTests &tests, const TestEvidence &proof);

} // namespace beadbook
