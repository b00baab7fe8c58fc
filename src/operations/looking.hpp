#pragma once

#include "operations/grade_standing.hpp"
#include "operations/selecting.hpp"
#include "operations/standing.hpp"
#include "records/taken_back.hpp"

namespace beadbook {

/// An exam in a list: whether it is finished, and whether it counts.
struct ExamAtAGlance {
    Exam method = Exam::VT;
    bool open = false, counts = true;
};
std::vector<ExamAtAGlance> exams_at_a_glance(const CouponState &coupon);

/// One coupon in a list.
struct CouponLine {
    CouponRecord record;
    std::vector<ExamAtAGlance> exams;
    std::size_t indications = 0;
    std::optional<Verdict> verdict; ///< of a fresh judgement; nothing if it cannot be judged
    std::string why_not;            ///< why there is none
    std::optional<Grade> grade;
    GradeStanding grade_standing;
    std::string own_file = {}; ///< that its set is none of those shipped, in few words; empty: it is one
};
/// The line of a coupon at hand; `grade` and what hangs on it with it.
CouponLine line_of(CouponAtHand &one);
/// One coupon with what follows from it.
struct CouponSheet {
    CouponState coupon;
    GradeStanding grade_standing;
    std::vector<std::string> mechanical_asked_by = {}; ///< rules that ask mechanical tests, if there are none
    std::vector<HeldQualification> qualified = {};     ///< what its welder holds by it, as it stands today
    std::vector<TakenBack> taken_back = {};            ///< finds that were withdrawn or corrected
    std::vector<DescribedSince> described_since =
        {}; ///< changes of the coupon after its grade, else after its last verdict
    std::vector<std::int64_t> older_than_filled =
        {}; ///< verdicts, by entry: other numbers fill the blanks now
};
CouponSheet show_coupon(Office &office, const std::string &mark);
/// In the order in which they were registered.
std::vector<CouponLine> list_coupons(Office &office, const Selection &of = {});

/// All that is on record of a coupon or a welder, oldest first.
std::vector<Entry> history_of_coupon(Office &office, const std::string &mark);
std::vector<Entry> history_of_welder(Office &office, const std::string &mark);

} // namespace beadbook
