#pragma once

#include "operations/standing.hpp"

namespace beadbook {

/// Tests that were graded passed and that nothing held or logged rests on, with the shipped rules by
/// which they would qualify: a pass alone qualifies nobody, somebody has to grant it.
std::vector<WelderStanding::ToQualify> to_qualify(Office &office, const GradedTests &tests,
                                                  const WelderStanding &standing);

} // namespace beadbook
