#include "operations/summarizing.hpp"

#include "measure/natural_order.hpp"
#include "operations/selecting.hpp"

#include <map>
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

/// When somebody tried: by the day it was welded, on one day by the mark. Of what has no day nobody knows, so
/// it comes last.
struct Attempt {
    std::string welded, mark;

    bool before(const Attempt &other) const {
        if (welded != other.welded) return !welded.empty() && (other.welded.empty() || welded < other.welded);
        return NaturalOrder{}(mark, other.mark);
    }
};

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
    // A first attempt may lie outside of what is asked for; another welder's never is one of this welder.
    Selection looked_at;
    looked_at.welder = of.welder;
    std::map<std::string, Attempt> firsts;
    select(office, looked_at, [&](CouponAtHand &one) {
        const CouponRecord &record = one.coupon().record;
        if (!record.withdrawn.empty() || record.get("welder").empty()) return;
        const Attempt now{record.get("welded"), record.id};
        const auto [first, fresh] = firsts.emplace(kind_of_attempt(record), now);
        if (!fresh && now.before(first->second)) first->second = now;
    });
    select(office, of, [&](CouponAtHand &one) {
        const CouponRecord &record = one.coupon().record;
        if (!record.withdrawn.empty()) return;
        const auto first = firsts.find(kind_of_attempt(record));
        coupons.push_back(counted(one, first != firsts.end() && first->second.mark == record.id));
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
