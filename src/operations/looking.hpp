#pragma once

#include "operations/grade_standing.hpp"
#include "operations/selection.hpp"
#include "operations/standing.hpp"
#include "records/taken_back.hpp"

namespace beadbook {

/// One coupon in a list.
struct CouponLine {
    CouponRecord record;
    std::vector<Exam> exams;
    std::size_t indications = 0;
    std::optional<Verdict> verdict; ///< of a fresh judgement; nothing if it cannot be judged
    std::string why_not;            ///< why there is none
    std::optional<Grade> grade;
    GradeStanding grade_standing;
};
/// One coupon with what follows from it.
struct CouponSheet {
    CouponState coupon;
    GradeStanding grade_standing;
    std::vector<std::string> mechanical_asked_by = {}; ///< rules that ask mechanical tests, if there are none
    std::vector<HeldQualification> qualified = {};     ///< what its welder holds by it, as it stands today
    std::vector<TakenBack> taken_back = {};            ///< finds that were withdrawn or corrected
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
