#pragma once

#include "operations/graded_tests.hpp"
#include "operations/standing.hpp"

namespace beadbook {

/// A welder's tests welded by that day that failed, with what the rules ask next; and those that were graded
/// failed and passed since.
std::vector<WelderStanding::Failed> failed_tests(Office &office, const GradedTests &tests,
                                                 const WelderState &welder, Day on);

} // namespace beadbook
