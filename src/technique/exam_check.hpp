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

/// A gap of the practice that bears on the exam, or may.
struct GapFinding {
    std::string what;
    std::vector<std::string> lacks; ///< conditions that would tell whether it does; empty: it does
};

/// Whether an exam was valid by its practice: yes, no, or cannot say for want of a condition or by a gap.
struct ExamCheck {
    Truth valid = Truth::yes;
    std::vector<ConditionFinding> findings; ///< all rules that were asked, what failed first
    std::vector<GapFinding> gaps;

    /// Why it does not count, in one line; empty if it does.
    std::string why_not() const;
};

/// Whether gaps of a practice count: always, but for replaying what was said before they did.
enum class Gaps { bear, ignored };

/// Pure. `conditions` as they were recorded, `day` of the exam; sizes and facts are the coupon's.
ExamCheck check_exam(const Practice &practice, const std::map<std::string, std::string> &conditions, Day day,
                     const Coupon &coupon, Gaps gaps = Gaps::bear);

/// Names of the conditions that the practice would still ask for, given what is recorded, in its order.
std::vector<std::string> conditions_wanted(const Practice &practice,
                                           const std::map<std::string, std::string> &conditions, Day day,
                                           const Coupon &coupon);

} // namespace beadbook
