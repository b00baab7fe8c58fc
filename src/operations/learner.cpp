#include "operations/learner.hpp"

#include "measure/text.hpp"
#include "operations/selecting.hpp"

#include <set>

namespace beadbook {
namespace {

Refusal nobody_called(Office &office, const std::string &welder) {
    std::set<std::string> known;
    for (auto &mark : office.book().welders()) known.insert(std::move(mark));
    for (const auto &mark : office.book().coupons())
        if (std::string by = office.book().coupon(mark).record.get("welder"); !by.empty())
            known.insert(std::move(by));
    return refused("no coupon on record names the welder '" + shown(welder) + "'" +
                   did_you_mean(welder, {known.begin(), known.end()}));
}

LearnerCoupon coupon_told(Office &office, CouponAtHand &one) {
    const CouponState &coupon = one.coupon();
    LearnerCoupon out;
    out.record = coupon.record;
    out.exams = exams_at_a_glance(coupon);
    out.finds = coupon.indications.size();
    out.grade = coupon.grade;
    out.grading = one.grading();
    out.remarks = coupon.remarks;
    try {
        out.explained = explain(office, coupon.record.id);
    } catch (const Refusal &e) {
        if (e.kind() == Refusal::Kind::record) throw;
        out.why_not = e.what();
    }
    return out;
}

std::vector<Learner::SaidOfAnother> said_of_another(Office &office, const std::string &welder,
                                                    const std::map<std::string, AfterTest> &tests) {
    std::vector<Learner::SaidOfAnother> out;
    for (const auto &[coupon, test] : tests) {
        if (test.failed_by.empty() || !office.book().knows_coupon(coupon)) continue;
        if (std::string now = office.coupon(coupon).record.get("welder"); now != welder)
            out.push_back({coupon, std::move(now), test.failed_by});
    }
    return out;
}

} // namespace

Learner learner_of(Office &office, const Selection &of) {
    Learner out;
    out.welder = of.welder;
    out.of = of;
    const bool enrolled = office.book().knows_welder(of.welder);
    if (!enrolled && (of.welder.empty() || office.book().coupons_of(of.welder).empty()))
        throw nobody_called(office, of.welder);
    if (enrolled) out.name = office.book().welder(of.welder).record.name;
    std::size_t accepted = 0, decided = 0;
    select(office, of, [&](CouponAtHand &one) {
        out.coupons.push_back(coupon_told(office, one));
        const auto &judged = one.judged().judged;
        if (!judged || !judged->withdrawn.empty() || judged->verdict() == Verdict::cannot_say) return;
        ++decided;
        if (judged->verdict() == Verdict::accept && !judged->bends_failed()) ++accepted;
    });
    auto after = after_tests(office, of.welder);
    out.said_of_another = said_of_another(office, of.welder, after);
    for (auto &one : out.coupons)
        if (const auto at = after.find(one.record.id); at != after.end()) one.after = std::move(at->second);
    put_in_order(out.coupons, [&](const auto &one) { return day_in_order(office, one.record); });
    out.accepted = share_of(accepted, decided);
    out.alike = alike_of(office, of);
    return out;
}

std::vector<std::shared_ptr<const CriteriaSet>> sets_of(const Learner &learner) {
    std::vector<std::shared_ptr<const CriteriaSet>> out;
    for (const auto &one : learner.coupons)
        if (one.explained) out.push_back(one.explained->judged.set);
    return out;
}

} // namespace beadbook
