#pragma once

#include "judge/coupon.hpp"
#include "technique/practice.hpp"

namespace beadbook {

/// One rule's word on one exam.
struct ConditionFinding {
    std::string rule; ///< its id
    Truth holds = Truth::yes;
    bool warning = false;
    std::vector<std::string> lacks; ///< conditions that nobody recorded
    std::string text;               ///< what was recorded, what is asked, clause and standing, what to repeat
};

/// Whether an exam was valid by its practice: yes, no, or cannot say for want of a condition.
struct ExamCheck {
    Truth valid = Truth::yes;
    std::vector<ConditionFinding> findings; ///< all rules that were asked, what failed first

    /// Why it does not count, in one line; empty if it does.
    std::string why_not() const;
};

/// Pure. `conditions` as they were recorded, `day` of the exam; sizes and facts are the coupon's.
ExamCheck check_exam(const Practice &practice, const std::map<std::string, std::string> &conditions, Day day,
                     const Coupon &coupon);

/// Names of the conditions that the practice would still ask for, given what is recorded, in its order.
std::vector<std::string> conditions_wanted(const Practice &practice,
                                           const std::map<std::string, std::string> &conditions, Day day,
                                           const Coupon &coupon);

} // namespace beadbook
