#pragma once

#include "operations/coupons.hpp"
#include "operations/examining.hpp"

namespace beadbook {

/// Does it for each mark. Refusals are gathered, so that every bad one is named; of a single mark the refusal
/// is thrown as it is. Throws Refusal: nothing may be committed then.
template <class Each>
void for_each_mark(const std::vector<std::string> &marks, Each each) {
    std::string faults;
    int bad = 0;
    for (const auto &mark : marks) {
        try {
            each(mark);
        } catch (const Refusal &e) {
            if (marks.size() == 1 || e.missing() || e.kind() == Refusal::Kind::record) throw;
            ++bad;
            faults += "\n" + mark + ": " + e.what();
        }
    }
    if (bad > 0)
        throw refused(std::to_string(bad) + " of " + std::to_string(marks.size()) +
                      " cannot be taken, nothing was stored:" + faults);
}

/// Several coupons of one kind.
struct CouponsRequest {
    std::vector<std::string> marks;
    std::map<std::string, std::string> fields; ///< a welder may be a series of as many as there are marks
    std::string like; ///< what it says of its weld is said of these too: not who, when, or with which result
    bool sure = false;
};
/// All or none. Notes: what was taken from the other coupon.
Done<std::vector<CouponRecord>> register_coupons(Writing &writing, const CouponsRequest &request);

/// The same exam of several coupons; `request.coupon` is each in turn. All or none.
Done<std::vector<ExamRecord>> record_exams(Writing &writing, const std::vector<std::string> &marks,
                                           ExamRequest request);

} // namespace beadbook
