#include "operations/summarizing.hpp"

#include "measure/natural_order.hpp"
#include "operations/selecting.hpp"

#include <map>
#include <set>
#include <unordered_map>

namespace beadbook {
namespace {

/// Who welded what: the same for a later attempt at the same.
std::string kind_of_attempt(const CouponRecord &coupon) {
    // In the order of the fields, so that one walk finds all: this is asked of every coupon on record.
    constexpr std::string_view asked[] = {"class",    "criteria", "form",    "joint", "joint-form",
                                          "position", "process",  "purpose", "welder"};
    std::string out;
    out.reserve(128);
    auto at = coupon.fields.begin();
    for (const std::string_view field : asked) {
        while (at != coupon.fields.end() && at->first < field) ++at;
        // Of what purpose nobody said is a test.
        if (at != coupon.fields.end() && at->first == field &&
            !(field == "purpose" && at->second.text == "test"))
            out += at->second.text;
        out += '\n';
    }
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

CountedCoupon counted(const CouponLine &line) {
    CountedCoupon out{
        line.record.get("joint"), line.record.get("welder"), {}, line.verdict, false, line.finds,
        line.rejected_by};
    out.own_file = line.verdict && !line.own_file.empty();
    out.with_cautions = line.verdict == Verdict::accept && line.cautions;
    out.bends_failed = line.record.bends_failed();
    if (const std::string welded = line.record.get("welded"); !welded.empty())
        out.week = print_week(parse_day(welded));
    return out;
}

/// The first attempt of each kind, of all coupons that were shown.
class FirstAttempts {
public:
    /// Where the first of its kind stands once all are shown; null: nobody is said to have welded it.
    const Attempt *see(const CouponRecord &coupon) {
        if (coupon.get("welder").empty()) return nullptr;
        Attempt now{coupon.get("welded"), coupon.id};
        const auto [first, fresh] = firsts_.try_emplace(kind_of_attempt(coupon), now);
        if (!fresh && now.before(first->second)) first->second = std::move(now);
        return &first->second;
    }

private:
    std::unordered_map<std::string, Attempt> firsts_; // whose elements stay where they are
};

/// Titles of rules, which are named "SET: RULE", by the criteria that reject by them.
void tell_titles(Office &office, const std::set<std::string> &criteria, std::vector<RuleCount> &rules) {
    std::map<std::string, std::string> titles;
    for (const auto &name : criteria)
        if (const auto set = office.criteria_or_none(name))
            for (const auto &rule : set->rules) titles.emplace(set->name + ": " + rule.id, rule.title);
    for (auto &rule : rules)
        if (const auto title = titles.find(rule.name); title != titles.end()) rule.title = title->second;
}

Summary summary_of_selection(const Shops &shops, const Selection &of) {
    struct Taken {
        const Attempt *first;
        std::string mark;
    };
    std::vector<CountedCoupon> coupons;
    std::vector<Taken> taken; // of the same coupons
    FirstAttempts firsts;
    std::set<std::string> welders, rejecting;
    std::size_t withdrawn_rejects = 0;
    select(shops, of, [&](CouponAtHand &one) {
        const CouponRecord &record = one.line().record;
        if (!of.all()) welders.insert(record.get("welder"));
        const bool rejected = one.withdrawn_reject();
        if (!record.withdrawn.empty() && !rejected) return;
        if (rejected) ++withdrawn_rejects;
        coupons.push_back(counted(one.line()));
        coupons.back().withdrawn = rejected;
        if (!rejected && !one.line().rejected_by.empty()) rejecting.insert(record.get("criteria"));
        taken.push_back({firsts.see(record), record.id});
    });
    // A welder's first attempt may lie outside of what is asked for.
    welders.erase("");
    if (!of.all())
        for (const auto &welder : welders)
            select(shops, {.welder = welder}, [&](CouponAtHand &one) {
                if (const CouponRecord &record = one.line().record;
                    record.withdrawn.empty() || one.withdrawn_reject())
                    firsts.see(record);
            });
    for (std::size_t i = 0; i < coupons.size(); ++i)
        coupons[i].first = taken[i].first && taken[i].first->mark == taken[i].mark;
    Summary out = summary_of(coupons);
    out.withdrawn_rejects = withdrawn_rejects;
    tell_titles(*shops.all().front().office, rejecting, out.rules);
    return out;
}

} // namespace

Summaries summarize(const Shops &shops, const std::vector<Selection> &groups) {
    Summaries out;
    for (const auto &of : groups) out.groups.push_back({of, summary_of_selection(shops, of)});
    return out;
}

} // namespace beadbook
