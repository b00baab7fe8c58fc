#pragma once

#include "operations/next_retest.hpp"
#include "operations/standing.hpp"

namespace beadbook {

/// What rules for welders make of a coupon as a test.
struct AfterTest {
    std::vector<std::string> failed_by;       ///< methods, or mechanical; empty: it is none that failed
    std::vector<NextRetest> next;             ///< until one of its kind counts again
    std::vector<HeldQualification> unsettled; ///< that rest on it, and are in doubt or proved no more
};

/// Of the coupons of one welder by their marks; those of which there is nothing to say are left out, all of
/// them if he is not enrolled.
std::map<std::string, AfterTest> after_tests(Office &office, const std::string &welder);

} // namespace beadbook
