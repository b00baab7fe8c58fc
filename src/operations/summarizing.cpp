#include "operations/summarizing.hpp"

#include "measure/natural_order.hpp"
#include "operations/selecting.hpp"

#include <map>

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

CountedCoupon counted(const CouponLine &line, bool first) {
    CountedCoupon out{
        line.record.get("joint"), line.record.get("welder"), {}, line.verdict, first, line.finds,
        line.rejected_by};
    out.bends_failed = line.record.get("mechanical") == "failed";
    if (const std::string welded = line.record.get("welded"); !welded.empty())
        out.week = print_week(parse_day(welded));
    return out;
}

Summary summary_of_selection(Office &office, const Selection &of) {
    std::vector<CountedCoupon> coupons;
    // A first attempt may lie outside of what is asked for; another welder's never is one of this welder.
    Selection looked_at;
    looked_at.welder = of.welder;
    std::map<std::string, Attempt> firsts;
    select(office, looked_at, [&](CouponAtHand &one) {
        const CouponRecord &record = one.line().record;
        if (!record.withdrawn.empty() || record.get("welder").empty()) return;
        const Attempt now{record.get("welded"), record.id};
        const auto [first, fresh] = firsts.emplace(kind_of_attempt(record), now);
        if (!fresh && now.before(first->second)) first->second = now;
    });
    select(office, of, [&](CouponAtHand &one) {
        const CouponRecord &record = one.line().record;
        if (!record.withdrawn.empty()) return;
        const auto first = firsts.find(kind_of_attempt(record));
        coupons.push_back(counted(one.line(), first != firsts.end() && first->second.mark == record.id));
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
