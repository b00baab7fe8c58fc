#include "operations/rests_on.hpp"

namespace beadbook {
namespace {

/// A text that an entry can hold, cut where a letter begins.
std::string storable(std::string text) {
    constexpr std::size_t most = 1000;
    if (text.size() <= most) return text;
    std::size_t end = most;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
    return text.substr(0, end) + " ...";
}

} // namespace

Evidence rests_on(const CouponState &coupon) {
    Evidence out;
    out.coupon = coupon.record.id;
    out.mechanical = coupon.record.get("mechanical");
    for (const auto &e : coupon.exams)
        out.exams.push_back({std::string(name_of(e.method)), print(e.date), e.examiner, e.level, e.procedure,
                             storable(e.done().why_not), e.level_as_typed});
    if (!coupon.grade) return out;
    const Grade &g = *coupon.grade;
    out.class_id = g.class_id;
    out.graded_by = g.stamp.who;
    out.graded_at = g.stamp.at;
    out.remark = g.remark;
    out.against_verdict = g.against_verdict;
    if (const StoredVerdict *v = coupon.graded_on()) {
        out.criteria = v->set;
        out.edition = v->edition;
        out.criteria_hash = v->hash;
        out.verdict = v->verdict_of(g.class_id);
    }
    return out;
}

} // namespace beadbook
