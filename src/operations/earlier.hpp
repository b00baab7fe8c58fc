#pragma once

#include "measure/natural_order.hpp"
#include "operations/judging.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace beadbook {

/// What was measured beside its limit, in percent: rounded away from the limit, so that what is over never
/// reads as 100 %, and what is within never as more.
struct ShareOfLimit {
    std::string rule; ///< its title
    Int128 percent = 0;
    bool least = false; ///< the limit is a minimum
    bool out = false;
};
/// Measured of a limit above zero; nothing where that has no share, or cannot be computed exactly.
std::optional<Int128> percent_of_limit(const Exact &measured, const Exact &limit, bool kept, bool least);

/// One coupon beside others of its kind.
struct ComparedCoupon {
    CouponRecord record;
    std::vector<Exam> exams;        ///< that count, each once
    std::optional<Verdict> verdict; ///< of its class, judged afresh by its own criteria
    std::string why_not;            ///< why there is none
    bool cautions = false;          ///< something stands beside the verdict
    std::string own_file;           ///< mark of criteria that are not as shipped; empty: they are
    std::string said;               ///< the verdict that its record keeps, where that is another one
    std::map<std::string, std::size_t, NaturalOrder> found; ///< finds by the name of their type
    std::vector<std::string> not_allowed; ///< titles of rules that allow none of what was found
    std::optional<ShareOfLimit> worst;    ///< farthest beyond a limit, or nearest to one where none is passed
    std::optional<Grade> grade;
    GradeStanding grading; ///< of the grade

    std::optional<Verdict> outcome() const { return outcome_of(verdict, record.bends_failed()); }
};
/// Coupons of one welder with the same criteria, class and joint; withdrawn ones are left out.
struct AlikeCoupons {
    std::string criteria, class_id, joint;
    std::vector<ComparedCoupon> coupons; ///< in the order in which they were registered
};

/// A coupon, which comes last, and those like it that its welder welded before: on an earlier day, or on the
/// same or an unknown one and registered before. It alone where no welder is named.
AlikeCoupons earlier_of(Office &office, const std::string &mark);
/// All like coupons among those of a welder, where there are two or more of a kind.
std::vector<AlikeCoupons> alike_of(Office &office, const Selection &of);

/// The day by which a welder's coupons are put in order: of the weld, or where nobody told it the one of the
/// registration, as a text that sorts.
std::string day_in_order(Office &office, const CouponRecord &coupon);

/// Sorts a list by a text of each, which is asked for once; equal ones stay as they stand.
template <class List, class Key>
void put_in_order(List &list, Key key) {
    std::vector<std::pair<std::string, std::size_t>> order;
    for (std::size_t i = 0; i < list.size(); ++i) order.emplace_back(key(list[i]), i);
    std::sort(order.begin(), order.end());
    List out;
    for (const auto &[text, at] : order) out.push_back(std::move(list[at]));
    list = std::move(out);
}

} // namespace beadbook
