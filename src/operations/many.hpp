#pragma once

#include "operations/coupons.hpp"
#include "operations/examining.hpp"
#include "operations/faults.hpp"
#include "operations/finishing.hpp"

namespace beadbook {

/// Does it for each mark. Refusals are gathered, so that every bad one is named; of a single mark the refusal
/// is thrown as it is. Throws Refusal: nothing may be committed then.
template <class Each>
void for_each_mark(const std::vector<std::string> &marks, Each each) {
    Faults faults(marks.size());
    for (const auto &mark : marks) {
        try {
            each(mark);
        } catch (const Refusal &e) {
            if (marks.size() == 1 || e.missing() || e.kind() == Refusal::Kind::record) throw;
            faults.add([&] { return mark; }, e.what());
        }
    }
    faults.check(std::to_string(faults.count()) + " of " + std::to_string(marks.size()));
}

/// Several coupons of one kind.
struct CouponsRequest {
    std::vector<std::string> marks;
    std::map<std::string, std::string> fields; ///< a welder may be a series of as many as there are marks
    std::string like; ///< what it says is said of these too: not who, when, or with which result
    bool sure = false;
    std::set<std::string> by_settings = {}; ///< as of CouponRequest
};
/// All or none. Notes: what was taken from the other coupon.
Done<std::vector<CouponRecord>> register_coupons(Writing &writing, const CouponsRequest &request);

/// The same change of a coupon, or of several; `request.said.mark` is each in turn. All or none: one of which
/// nothing would change is named too. Notes: which others were registered like one of them, and say still
/// what it said before.
Done<std::vector<CouponRecord>> change_coupons(Writing &writing, const std::vector<std::string> &marks,
                                               CouponChange request);

/// Exams of several coupons: of each coupon one by each method.
struct ExamsRecorded {
    std::vector<std::string> coupons; ///< of each exam
    std::vector<ExamRecord> exams;
};
/// Exams that were finished, each with its coupon.
struct ExamsFinished {
    std::vector<std::string> coupons;
    std::vector<ExamRecord> exams;
};
/// Finishes an exam of each coupon, or one by each method; `request.coupon` and then `request.method` are
/// each in turn. All or none.
Done<ExamsFinished> finish_exams(Writing &writing, const std::vector<std::string> &marks,
                                 FinishRequest request, const std::vector<Exam> &methods = {});

/// The same exam of several coupons, by several methods if they are given; `request.coupon` and then
/// `request.method` are each in turn. All or none.
Done<ExamsRecorded> record_exams(Writing &writing, const std::vector<std::string> &marks, ExamRequest request,
                                 std::vector<Exam> methods = {});

} // namespace beadbook
