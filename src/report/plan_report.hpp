#pragma once

#include "judge/coupon.hpp"
#include "qualify/plan.hpp"
#include "report/range_report.hpp"

namespace beadbook {

/// An examination that a planned coupon needs, and why.
struct PlannedExam {
    std::vector<std::string> one_of;
    std::string why; ///< by which rule, and what of the coupon brings it
};

/// What the criteria require of a coupon in one class.
std::vector<PlannedExam> required_exams(const CriteriaSet &set, std::size_t class_index,
                                        const Coupon &coupon);

/// A planned coupon with all that the plan says of it.
struct PlannedTest {
    PlannedCoupon coupon;
    std::string class_id; ///< strictest of its jobs; empty if none is named
    std::vector<PlannedExam> exams;
    std::vector<std::string> notes;
};

/// By the criteria's required examinations in the strictest class of the coupon's jobs, and by the rules'
/// own for the test. `set` may be null.
std::vector<PlannedTest> examinations_for(const Work &work, const Plan &plan, const CriteriaSet *set);

/// "VT", "RT or mechanical tests (bend, fracture or section)".
std::string exams_text(std::vector<std::string> one_of);

std::string explain_plan(const Work &work, const Plan &plan, const std::vector<PlannedTest> &tests,
                         const Paint &paint);
nlohmann::json plan_json(const Work &work, const Plan &plan, const std::vector<PlannedTest> &tests);

} // namespace beadbook
