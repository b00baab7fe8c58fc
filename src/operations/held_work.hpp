#pragma once

#include "operations/planning.hpp"
#include "operations/standing.hpp"

namespace beadbook {

struct HeldWorkRequest {
    std::string welder;    ///< mark
    std::optional<Day> on; ///< absent: today
    PlanRequest plan;
};

/// Which of the shop's work a welder may do, and which coupons would add the rest.
struct HeldWork {
    std::string welder;
    Day on{};
    PlanResult plan;
    /// Tests in a process of the work that failed, and with which no retest is done.
    std::vector<WelderStanding::Failed> failed = {};
};

/// Throws DataError: no such welder, or a mistake in the work.
Done<HeldWork> held_work(Office &office, const HeldWorkRequest &request);

/// Qualifications as planning looks at them.
std::vector<HeldTest> held_tests(const std::vector<HeldQualification> &held);

} // namespace beadbook
