#include "operations/earlier.hpp"

#include "criteria/provenance.hpp"
#include "operations/grade_standing.hpp"
#include "operations/looking_back.hpp"
#include "operations/selecting.hpp"
#include "operations/told_class.hpp"

#include <algorithm>

namespace beadbook {
namespace {

using Kind = std::array<std::string, 3>;

Kind kind_of_alike(const CouponRecord &coupon) {
    return {coupon.get("criteria"), coupon.get("class"), coupon.get("joint")};
}

std::string title_of_rule(const CriteriaSet &set, int index) {
    const Rule &rule = set.rules[static_cast<std::size_t>(index)];
    return rule.title.empty() ? rule.id : rule.title;
}

std::optional<ShareOfLimit> share_of_finding(const CriteriaSet &set, const Finding &f) {
    if (f.rule < 0 || !f.has_numbers) return std::nullopt;
    ShareOfLimit out{title_of_rule(set, f.rule)};
    out.least = !is_maximum(set.rules[static_cast<std::size_t>(f.rule)].compare);
    out.out = f.effect == Verdict::reject;
    const auto percent = percent_of_limit(f.measured, f.limit, !out.out, out.least);
    if (!percent) return std::nullopt;
    out.percent = *percent;
    return out;
}

void add_reasons(ComparedCoupon &out, const Judged &judged) {
    const ClassJudgement &of = judged.judgement.classes[told_class(judged)];
    const Finding *worst = nullptr;
    for (const auto &f : of.findings) {
        if (f.effect != Verdict::reject || f.rule < 0) continue;
        if (f.has_numbers && f.limit > Exact(0)) {
            if (!worst || f.ratio > worst->ratio) worst = &f;
        } else if (std::string title = title_of_rule(*judged.set, f.rule);
                   std::find(out.not_allowed.begin(), out.not_allowed.end(), title) ==
                   out.not_allowed.end()) {
            out.not_allowed.push_back(std::move(title));
        }
    }
    if (!worst && of.nearest && of.verdict == Verdict::accept) worst = &*of.nearest;
    if (worst) out.worst = share_of_finding(*judged.set, *worst);
}

/// What its record said last of its class, by the same set.
std::string said_last(const CouponState &coupon) {
    const std::string set = coupon.record.get("criteria"), id = coupon.record.get("class");
    for (auto one = coupon.verdicts.rbegin(); one != coupon.verdicts.rend(); ++one)
        if (one->set == set) return one->verdict_of(id);
    return "";
}

ComparedCoupon compared(Office &office, const CouponState &coupon) {
    ComparedCoupon out;
    out.record = coupon.record;
    out.grade = coupon.grade;
    out.grading = standing_of_grade(office, coupon);
    for (const auto &find : coupon.found()) ++out.found[Vocabulary::shipped()[find.type].name];
    const JudgedOrNot judged = judge_looking_back(office, coupon);
    if (!judged.judged) {
        out.why_not = judged.why_not;
        return out;
    }
    for (const auto &exam : judged.judged->exams)
        if (exam.counts && std::find(out.exams.begin(), out.exams.end(), exam.method) == out.exams.end())
            out.exams.push_back(exam.method);
    out.verdict = judged.judged->verdict();
    out.cautions = judged.judged->with_cautions();
    out.own_file = own_file_mark(judged.judged->set->name, judged.judged->set->hash);
    if (const std::string said = said_last(coupon); !said.empty() && said != name_of(*out.verdict))
        out.said = said;
    add_reasons(out, *judged.judged);
    return out;
}

bool welded_before(const CouponRecord &a, bool registered_before, const CouponRecord &b) {
    const std::string on = a.get("welded"), other = b.get("welded");
    // Days are kept as 2026-11-25, so that their order is that of the texts.
    return on.empty() || other.empty() || on == other ? registered_before : on < other;
}

AlikeCoupons none_of(const Kind &kind) { return {kind[0], kind[1], kind[2], {}}; }

} // namespace

std::optional<Int128> percent_of_limit(const Exact &measured, const Exact &limit, bool kept, bool least) {
    if (limit <= Exact(0) || measured < Exact(0)) return std::nullopt;
    try {
        const Exact share = measured * Exact(100) / limit;
        const Int128 below = share.num() / share.den();
        // Within a most, and short of a least, is below the limit: down, away from it.
        return kept == least && !share.is_whole() ? below + 1 : below;
    } catch (const OutOfRange &) {
        return std::nullopt;
    }
}

std::string day_in_order(Office &office, const CouponRecord &coupon) {
    if (std::string welded = coupon.get("welded"); !welded.empty()) return welded;
    return office.book().history(coupon.id).front().at.substr(0, 10);
}

AlikeCoupons earlier_of(Office &office, const std::string &mark) {
    const CouponState now = office.coupon(mark);
    const Kind kind = kind_of_alike(now.record);
    AlikeCoupons out = none_of(kind);
    const std::string welder = now.record.get("welder");
    bool registered_before = true;
    for (const auto &other : welder.empty() ? std::vector<std::string>{} : office.book().coupons_of(welder)) {
        if (other == mark) {
            registered_before = false;
            continue;
        }
        const CouponState before = office.coupon(other);
        if (before.record.get("welder") != welder || !before.record.withdrawn.empty() ||
            kind_of_alike(before.record) != kind ||
            !welded_before(before.record, registered_before, now.record))
            continue;
        out.coupons.push_back(compared(office, before));
    }
    out.coupons.push_back(compared(office, now));
    return out;
}

std::vector<AlikeCoupons> alike_of(Office &office, const Selection &of) {
    std::map<Kind, AlikeCoupons> kinds;
    select(office, of, [&](CouponAtHand &one) {
        if (!one.coupon().record.withdrawn.empty()) return;
        const Kind kind = kind_of_alike(one.coupon().record);
        kinds.try_emplace(kind, none_of(kind))
            .first->second.coupons.push_back(compared(office, one.coupon()));
    });
    std::vector<AlikeCoupons> out;
    for (auto &[kind, alike] : kinds) {
        if (alike.coupons.size() < 2) continue;
        put_in_order(alike.coupons, [&](const auto &one) { return day_in_order(office, one.record); });
        out.push_back(std::move(alike));
    }
    return out;
}

} // namespace beadbook
