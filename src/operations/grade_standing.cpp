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

std::string against_words(const std::string &class_id, const std::string &now, const std::string &by,
                          const std::string &on, const std::string &remark) {
    return "the verdict for class " + class_id + " is '" + now + "', and " + by + " graded it passed on " +
           on + (remark.empty() ? "" : ": " + remark);
}

std::string grade_moved_words(const std::string &class_id, const std::string &was, const std::string &now) {
    if (was.empty()) return "the verdict that it was given on is not on record";
    return "the verdict for class " + class_id + " was '" + was + "' when it was given and is '" + now +
           "' now";
}

GradeStanding standing_of_grade(Office &office, const CouponState &coupon) {
    GradeStanding out;
    if (!coupon.grade) return out;
    const Grade &grade = *coupon.grade;
    out.state = GradeStanding::State::again;
    if (!coupon.record.withdrawn.empty()) {
        out.why = "the coupon is withdrawn: " + coupon.record.withdrawn;
        return out;
    }
    const StoredVerdict *then = verdict_at(coupon, grade);
    const auto set =
        then ? office.with_copy(office.catalogue().kept_criteria(office.ledger(), then->hash)) : nullptr;
    const auto index = set ? set->class_index(grade.class_id) : std::nullopt;
    if (!index) {
        out.why = grade_moved_words(grade.class_id, "", "");
        return out;
    }
    out.now = judge_by(coupon, set).judgement.classes[*index].verdict;
    out.was = then->verdict_of(grade.class_id);
    const std::string now(name_of(out.now));
    if (out.was == now)
        out.state = GradeStanding::State::stands;
    else
        out.why = grade_moved_words(grade.class_id, out.was, now);
    const auto again = [&](const std::string &why) {
        out.state = GradeStanding::State::again;
        out.why += (out.why.empty() ? "" : "; ") + why;
    };
    if (grade.passed && coupon.sought_changed > grade.seq)
        again("the coupon is registered for other criteria or another class since");
    if (grade.passed && coupon.mechanical_failed > grade.seq && coupon.record.get("mechanical") != "failed")
        again("its mechanical tests were said to have failed after it was given");
    // A grade that was given in spite of them says so; one that does not speak of them is to be given again.
    if (grade.passed && !grade.against_mechanical && coupon.record.get("mechanical") == "failed")
        again("its mechanical tests failed");
    return out;
}

} // namespace beadbook
