#include "operations/said_by_welder.hpp"

#include "facts/plausibility.hpp"

#include <map>

namespace beadbook {

std::vector<SaidByWelder> said_by_welder(Office &office, const CouponState &coupon,
                                         const std::string &welder) {
    std::vector<SaidByWelder> out;
    if (welder.empty()) return out;
    const auto take = [&](const std::string &who, const std::string &what, bool also_known = true) {
        const auto &as = office.as_welder(who, welder);
        if (as.is && also_known)
            out.push_back({who, "who welded it, " + what});
        else if (!as.is && !as.taken_for.empty())
            out.push_back({who, "who may be its welder, " + as.taken_for + ", " + what});
    };
    for (const auto &exam : coupon.exams) {
        const std::string of = "exam " + std::to_string(exam.number);
        if (!is_meant(exam.sure, "examiner-like-welder")) take(exam.examiner, "made " + of, false);
        if (exam.finished) take(exam.finished->by, "finished " + of, false);
    }
    std::map<std::int64_t, const Entry *> standing;
    const auto history = office.book().history(coupon.record.id);
    for (const auto &e : history) {
        if (e.supersedes) standing.erase(*e.supersedes);
        if (e.kind == "indication") standing.emplace(e.seq, &e);
    }
    for (const auto &[seq, e] : standing)
        take(e->who, "entered what stands of #" + std::to_string(e->number.value_or(0)) + " (entry " +
                         std::to_string(seq) + ")");
    if (!coupon.record.get("mechanical").empty())
        take(coupon.mechanical_said.who, "said what its mechanical tests came to");
    if (coupon.grade) take(coupon.grade->stamp.who, "graded it");
    return out;
}

std::vector<SaidByWelder> said_by_welders(Office &office, const CouponState &coupon, Fellows fellows) {
    const std::string welder = coupon.record.get("welder");
    auto out = said_by_welder(office, coupon, welder);
    const auto take = [&](const std::string &who, const std::string &what) {
        if (!office.welder_alone(who).empty() && !office.as_welder(who, welder).is)
            out.push_back({who, "on record as a welder alone, " + what});
    };
    for (const auto &exam : coupon.exams) {
        if (!exam.done().counts) continue;
        const std::string of = "exam " + std::to_string(exam.number);
        take(exam.examiner, "made " + of);
        if (fellows == Fellows::all && exam.finished && exam.finished->by != exam.examiner)
            take(exam.finished->by, "finished " + of);
    }
    if (fellows == Fellows::all && !coupon.record.get("mechanical").empty())
        take(coupon.mechanical_said.who, "said what its mechanical tests came to");
    return out;
}

} // namespace beadbook
