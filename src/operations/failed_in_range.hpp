#pragma once

#include "operations/graded_tests.hpp"
#include "operations/standing.hpp"

namespace beadbook {

/// A test that the welder failed before the one that a qualification rests on, or on its day, which is of
/// another kind and in whose place that one would qualify, wholly or in some positions, or of its kind and
/// welded otherwise: as long as no retest is done with it, a caution stands beside the qualification (common
/// practice, no source). The same of what nobody judged, as it may have failed.
void tell_failed_in_range(const GradedTests &tests, Day on, HeldQualification &held);

} // namespace beadbook
