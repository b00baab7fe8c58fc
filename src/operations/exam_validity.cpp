#include "operations/exam_validity.hpp"

namespace beadbook {

CouponValidity exam_validity(Office &office, const std::string &coupon) {
    const CouponState state = office.coupon(coupon);
    const Coupon facts = state.record.facts();
    CouponValidity out{state.record.id, {}, state.exams.empty() ? Truth::unknown : Truth::yes};
    for (const auto &exam : state.exams) {
        ExamValidity one{exam, nullptr, {}};
        if (one.judged()) {
            one.practice = office.catalogue().kept_practice(office.ledger(), exam.practice_hash);
            if (one.practice) one.check = check_exam(*one.practice, exam.conditions_told(), exam.date, facts);
        }
        out.all = both(out.all, one.valid());
        out.exams.push_back(std::move(one));
    }
    return out;
}

} // namespace beadbook
