#pragma once

#include "facts/coupon_line.hpp"
#include "operations/grade_standing.hpp"
#include "operations/selection.hpp"
#include "operations/shops.hpp"
#include "operations/standing.hpp"
#include "operations/taken_back.hpp"

namespace beadbook {

/// One coupon with what follows from it.
struct CouponSheet {
    CouponState coupon;
    std::string welder_name; ///< as enrolled today; empty: the welder is not
    GradeStanding grade_standing;
    std::vector<std::string> mechanical_asked_by = {}; ///< rules that ask mechanical tests, if there are none
    std::vector<HeldQualification> qualified = {};     ///< what its welder holds by it, as it stands today
    std::vector<TakenBack> taken_back = {};            ///< finds and exams that are no more, or no more so
    std::vector<DescribedSince> described_since =
        {}; ///< changes of the coupon after its grade, else after its last verdict
    std::vector<std::int64_t> older_than_filled =
        {};                                  ///< verdicts, by entry: other numbers fill the blanks now
    std::string said_before_correction = {}; ///< operations/registered_like.hpp
};
CouponSheet show_coupon(Office &office, const std::string &mark);
/// In the order in which they were registered.
std::vector<CouponLine> list_coupons(const Shops &shops, const Selection &of = {});

/// All that is on record of a coupon or a welder, oldest first.
std::vector<Entry> history_of_coupon(Office &office, const std::string &mark);
std::vector<Entry> history_of_welder(Office &office, const std::string &mark);

} // namespace beadbook
