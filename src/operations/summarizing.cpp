#include "operations/summarizing.hpp"

#include "operations/selecting.hpp"

#include <set>

namespace beadbook {
namespace {

/// Who welded what: the same for a later attempt at the same.
std::string kind_of_attempt(const CouponRecord &coupon) {
    std::string out;
    for (const char *field :
         {"welder", "joint", "joint-form", "form", "position", "process", "criteria", "class", "purpose"})
        out += coupon.get(field) + '\n';
    return out;
}

/// Reasons that reject: of the class sought, or of all where none is named.
void count_reasons(const Judged &judged, CountedCoupon &into, std::set<int> &rejecting) {
    std::set<std::string> of_any_class;
    for (std::size_t k = 0; k < judged.judgement.classes.size(); ++k) {
        if (judged.sought && *judged.sought != k) continue;
        for (const auto &f : judged.judgement.classes[k].findings) {
            if (f.effect != Verdict::reject) continue;
            rejecting.insert(f.indications.begin(), f.indications.end());
            if (f.rule < 0) continue;
            std::string rule =
                judged.set->name + ": " + judged.set->rules[static_cast<std::size_t>(f.rule)].id;
            // Without a class sought one rule speaks once a class, of the same.
            if (judged.sought)
                into.rejected_by.push_back(std::move(rule));
            else
                of_any_class.insert(std::move(rule));
        }
    }
    into.rejected_by.insert(into.rejected_by.end(), of_any_class.begin(), of_any_class.end());
}

CountedCoupon counted(CouponAtHand &one, bool first) {
    const CouponState &coupon = one.coupon();
    CountedCoupon out;
    out.joint = coupon.record.get("joint");
    out.welder = coupon.record.get("welder");
    out.first = first;
    out.bends_failed = coupon.record.get("mechanical") == "failed";
    if (const std::string welded = coupon.record.get("welded"); !welded.empty())
        out.week = print_week(parse_day(welded));
    std::set<int> rejecting;
    if (const auto &judged = one.judged().judged) {
        out.verdict = judged->verdict();
        if (out.verdict == Verdict::reject) count_reasons(*judged, out, rejecting);
    }
    const Vocabulary &vocabulary = Vocabulary::shipped();
    const WeldLine line = coupon.record.facts().line;
    for (const auto &find : coupon.found(vocabulary))
        out.finds.push_back(
            {vocabulary[find.type].name, part_of(find.place, line), rejecting.contains(find.number)});
    return out;
}

Summary summary_of_selection(Office &office, const Selection &of) {
    std::vector<CountedCoupon> coupons;
    std::set<std::string> attempts;
    // A first attempt may lie outside of what is asked for; another welder's never is one of this welder.
    Selection looked_at;
    looked_at.welder = of.welder;
    select(office, looked_at, [&](CouponAtHand &one) {
        const CouponRecord &record = one.coupon().record;
        if (!record.withdrawn.empty()) return;
        const bool first = attempts.insert(kind_of_attempt(record)).second && !record.get("welder").empty();
        if (is_meant(of, one)) coupons.push_back(counted(one, first));
    });
    return summary_of(coupons);
}

} // namespace

Summaries summarize(Office &office, const std::vector<Selection> &groups) {
    Summaries out;
    for (const auto &of : groups) out.groups.push_back({of, summary_of_selection(office, of)});
    return out;
}

} // namespace beadbook
