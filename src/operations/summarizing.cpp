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

CountedCoupon counted(const CouponLine &line, bool first) {
    CountedCoupon out{
        line.record.get("joint"), line.record.get("welder"), {}, line.verdict, first, line.finds,
        line.rejected_by};
    if (const std::string welded = line.record.get("welded"); !welded.empty())
        out.week = print_week(parse_day(welded));
    return out;
}

Summary summary_of_selection(Office &office, const Selection &of) {
    std::vector<CountedCoupon> coupons;
    std::set<std::string> attempts;
    // A first attempt may lie outside of what is asked for; another welder's never is one of this welder.
    Selection looked_at;
    looked_at.welder = of.welder;
    select(office, looked_at, [&](CouponAtHand &one) {
        const CouponRecord &record = one.line().record;
        if (!record.withdrawn.empty()) return;
        const bool first = attempts.insert(kind_of_attempt(record)).second && !record.get("welder").empty();
        if (is_meant(of, one)) coupons.push_back(counted(one.line(), first));
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
