#include "operations/summary.hpp"

#include "measure/natural_order.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <string_view>
#include <unordered_map>

namespace beadbook {
namespace {

/// An outcome that is being counted.
struct Tally {
    Outcome out;
    std::size_t first = 0, first_accepted = 0;

    void add(const CountedCoupon &one) {
        if (one.withdrawn) {
            if (one.first) ++first;
            return;
        }
        ++out.coupons;
        if (!one.verdict) {
            ++out.not_judged;
        } else if (*one.verdict == Verdict::cannot_say) {
            ++out.cannot_say;
        } else {
            const bool passes = *one.verdict == Verdict::accept, accepted = passes && !one.bends_failed;
            ++(accepted ? out.accepted : passes ? out.bends_failed : out.rejected);
            if (!one.first) return;
            ++first;
            if (accepted) ++first_accepted;
        }
    }
    Outcome finished(const std::string &name) && {
        out.name = name;
        out.share = share_of(out.accepted, out.accepted + out.bends_failed + out.rejected);
        out.first_pass = share_of(first_accepted, first);
        return std::move(out);
    }
};

std::vector<Outcome> outcomes_by(const std::vector<CountedCoupon> &coupons, std::string CountedCoupon::*by) {
    std::unordered_map<std::string_view, Tally> tallies; // in order once all are counted
    for (const auto &one : coupons) tallies[one.*by].add(one);
    std::vector<Outcome> out;
    for (auto &[name, tally] : tallies) out.push_back(std::move(tally).finished(std::string(name)));
    std::sort(out.begin(), out.end(),
              [](const Outcome &a, const Outcome &b) { return NaturalOrder{}(a.name, b.name); });
    if (!out.empty() && out.front().name.empty()) std::rotate(out.begin(), out.begin() + 1, out.end());
    return out;
}

void count_find(FindCount &into, const CouponLine::Find &find, bool first_of_coupon) {
    ++into.finds;
    if (find.rejects) ++into.rejecting;
    if (first_of_coupon) ++into.coupons;
}

} // namespace

Summary summary_of(const std::vector<CountedCoupon> &coupons) {
    Summary out;
    Tally all;
    std::map<std::string, FindCount> types;
    std::array<FindCount, weld_part_count> parts;
    struct Rejections {
        std::size_t reasons = 0, coupons = 0;
    };
    std::map<std::string, Rejections> rules;
    for (const auto &one : coupons) {
        all.add(one);
        if (one.withdrawn) continue;
        if (one.own_file) ++out.by_own_files;
        if (one.with_cautions) ++out.with_cautions;
        std::set<std::string> seen_types, seen_rules;
        std::set<WeldPart> seen_parts;
        for (const auto &find : one.finds) {
            ++(find.held ? out.held : find.unjudged ? out.unjudged : out.finds);
            if (find.held || find.unjudged) continue;
            count_find(types[find.imperfection], find, seen_types.insert(find.imperfection).second);
            count_find(parts[static_cast<std::size_t>(find.part)], find, seen_parts.insert(find.part).second);
        }
        for (const auto &rule : one.rejected_by) {
            ++rules[rule].reasons;
            if (seen_rules.insert(rule).second) ++rules[rule].coupons;
        }
    }
    out.all = std::move(all).finished("");
    for (auto &[name, count] : types) {
        count.name = name;
        out.imperfections.push_back(count);
    }
    std::stable_sort(out.imperfections.begin(), out.imperfections.end(),
                     [](const auto &a, const auto &b) { return a.finds > b.finds; });
    for (std::size_t p = 0; p < parts.size(); ++p) {
        if (parts[p].finds == 0) continue;
        parts[p].name = name_of(static_cast<WeldPart>(p));
        out.places.push_back(parts[p]);
    }
    for (const auto &[name, rule] : rules)
        out.rules.push_back({name, rule.reasons, share_of(rule.coupons, out.all.rejected)});
    std::stable_sort(out.rules.begin(), out.rules.end(),
                     [](const auto &a, const auto &b) { return a.coupons.count > b.coupons.count; });
    out.joints = outcomes_by(coupons, &CountedCoupon::joint);
    out.welders = outcomes_by(coupons, &CountedCoupon::welder);
    out.weeks = outcomes_by(coupons, &CountedCoupon::week);
    return out;
}

} // namespace beadbook
