#pragma once

#include "operations/graded_tests.hpp"
#include "operations/standing.hpp"

namespace beadbook {

/// Whether no retest is done yet with what failed, by a test that the rules would take: neither that day, nor
/// before another failed after it, with which a new round begins.
bool no_retest_done(const GradedTests &tests, const GradedTests::Test &failed, const Weld &weld,
                    const RangeRules &rules, Day on);

/// A test that the welder failed before the one that a qualification rests on, or on its day, which is of
/// another kind and in whose place that one would qualify, wholly or in some positions, or of its kind and
/// welded otherwise: as long as no retest is done with it, a caution stands beside the qualification (common
/// practice, no source). The same of what nobody judged, as it may have failed.
void tell_failed_in_range(const GradedTests &tests, Day on, HeldQualification &held);

} // namespace beadbook
