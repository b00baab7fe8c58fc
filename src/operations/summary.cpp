#include "operations/summary.hpp"

#include "measure/natural_order.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <set>

namespace beadbook {
namespace {

/// An outcome that is being counted.
struct Tally {
    Outcome out;
    std::size_t first = 0, first_accepted = 0;

    void add(const CountedCoupon &one) {
        ++out.coupons;
        if (!one.verdict) {
            ++out.not_judged;
        } else if (*one.verdict == Verdict::cannot_say) {
            ++out.cannot_say;
        } else {
            const bool accepted = *one.verdict == Verdict::accept;
            ++(accepted ? out.accepted : out.rejected);
            if (!one.first) return;
            ++first;
            if (accepted) ++first_accepted;
        }
    }
    Outcome finished(const std::string &name) && {
        out.name = name;
        out.share = share_of(out.accepted, out.accepted + out.rejected);
        out.first_pass = share_of(first_accepted, first);
        return std::move(out);
    }
};

std::vector<Outcome> outcomes_by(const std::vector<CountedCoupon> &coupons, std::string CountedCoupon::*by) {
    std::map<std::string, Tally, NaturalOrder> tallies;
    for (const auto &one : coupons) tallies[one.*by].add(one);
    std::vector<Outcome> out;
    for (auto &[name, tally] : tallies) out.push_back(std::move(tally).finished(name));
    if (!out.empty() && out.front().name.empty()) std::rotate(out.begin(), out.begin() + 1, out.end());
    return out;
}

void count_find(FindCount &into, const CountedCoupon::Find &find, bool first_of_coupon) {
    ++into.finds;
    if (find.rejects) ++into.rejecting;
    if (first_of_coupon) ++into.coupons;
}

} // namespace

std::string_view name_of(WeldPart part) {
    static constexpr std::array<std::string_view, weld_part_count> names{"12:00 to 3:00",
                                                                         "3:00 to 6:00",
                                                                         "6:00 to 9:00",
                                                                         "9:00 to 12:00",
                                                                         "first quarter of the weld",
                                                                         "second quarter of the weld",
                                                                         "third quarter of the weld",
                                                                         "last quarter of the weld",
                                                                         "place not known"};
    return names[static_cast<std::size_t>(part)];
}

WeldPart part_of(const std::optional<Span> &place, const WeldLine &line) {
    if (!place || !line.length || line.length->nm <= 0) return WeldPart::unknown;
    const std::int64_t length = line.length->nm;
    // The far end of a weld belongs to its last part; on a closed one it is the datum again.
    const std::int64_t at = line.closed ? (place->from.nm % length + length) % length
                                        : std::clamp(place->from.nm, std::int64_t{0}, length - 1);
    const auto quarter = static_cast<int>(Int128(at) * 4 / length);
    return static_cast<WeldPart>(quarter + static_cast<int>(line.closed ? WeldPart::at_12 : WeldPart::first));
}

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
        out.finds += one.finds.size();
        std::set<std::string> seen_types, seen_rules;
        std::set<WeldPart> seen_parts;
        for (const auto &find : one.finds) {
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
