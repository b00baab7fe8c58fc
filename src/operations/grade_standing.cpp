#include "operations/grade_standing.hpp"

namespace beadbook {
namespace {

/// The verdict that was kept when the grade was given: the newest before it.
const StoredVerdict *verdict_at(const CouponState &coupon, const Grade &grade) {
    const StoredVerdict *out = nullptr;
    for (const auto &v : coupon.verdicts)
        if (v.seq < grade.seq) out = &v;
    return out;
}

} // namespace

std::string against_verdict(const CouponState &coupon, const GradeStanding &standing) {
    const Grade &grade = *coupon.grade;
    return "the verdict for class " + grade.class_id + " is '" + std::string(name_of(standing.now)) +
           "', and " + grade.stamp.who + " graded it " + grade.decision() + " on " +
           grade.stamp.at.substr(0, 10) + (grade.remark.empty() ? "" : ": " + grade.remark);
}

GradeStanding standing_of_grade(Office &office, const CouponState &coupon) {
    GradeStanding out;
    if (!coupon.grade) return out;
    const Grade &grade = *coupon.grade;
    out.state = GradeStanding::State::again;
    const StoredVerdict *then = verdict_at(coupon, grade);
    const auto set = then ? office.catalogue().kept_criteria(office.ledger(), then->hash) : nullptr;
    const auto index = set ? set->class_index(grade.class_id) : std::nullopt;
    if (!index) {
        out.why = "the verdict that it was given on is not on record";
        return out;
    }
    out.now = judge_by(coupon, set).judgement.classes[*index].verdict;
    const std::string before = then->verdict_of(grade.class_id), now(name_of(out.now));
    if (before == now)
        out.state = GradeStanding::State::stands;
    else
        out.why = "the verdict for class " + grade.class_id + " was '" + before +
                  "' when it was given and is '" + now + "' now";
    return out;
}

} // namespace beadbook
