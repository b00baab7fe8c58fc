#pragma once

#include "measure/share.hpp"
#include "operations/after_test.hpp"
#include "operations/coupon_lines.hpp"
#include "operations/earlier.hpp"

namespace beadbook {

/// One of a learner's coupons with all that is said of it.
struct LearnerCoupon {
    CouponRecord record;
    std::optional<Explained> explained; ///< nothing if it cannot be judged
    std::string why_not;                ///< why there is none
    std::vector<ExamAtAGlance> exams;   ///< by number
    std::size_t finds = 0;
    std::optional<Grade> grade;
    GradeStanding grading; ///< of the grade
    std::vector<Remark> remarks;
    AfterTest after = {};
};
/// Everything on record of the coupons that one welder welded.
struct Learner {
    std::string welder, name; ///< the name if the welder is enrolled
    Selection of;
    std::vector<LearnerCoupon> coupons; ///< by the day of the weld (operations/earlier.hpp)
    std::vector<AlikeCoupons> alike;    ///< those of a kind beside each other
    /// Tests that failed as this welder's, and are said to be another's since: they stay his.
    struct SaidOfAnother {
        std::string coupon, welder; ///< the mark of the other; empty: nobody's
        std::vector<std::string> failed_by;
    };
    std::vector<SaidOfAnother> said_of_another;
    Share accepted; ///< of those accepted or rejected, for the class sought or where none is for any; none
                    ///< withdrawn. Not accepted is what was, and whose mechanical tests failed
};

/// `of.welder` says whose. Throws Refusal: nobody is enrolled as that, and no coupon on record names that
/// welder, with the nearest that one does.
Learner learner_of(Office &office, const Selection &of);
/// The sets that the verdicts are by.
std::vector<std::shared_ptr<const CriteriaSet>> sets_of(const Learner &learner);

} // namespace beadbook
