#include "operations/to_qualify.hpp"

#include "operations/evidence.hpp"

#include <algorithm>

namespace beadbook {
namespace {

bool is_used(const WelderStanding &standing, const std::string &coupon) {
    const auto of_event = [&](const WelderEvent &event) {
        return std::any_of(event.evidence.begin(), event.evidence.end(),
                           [&](const auto &proof) { return proof.coupon == coupon; });
    };
    return std::any_of(standing.held.begin(), standing.held.end(),
                       [&](const HeldQualification &held) { return rests_on(held, coupon); }) ||
           std::any_of(standing.welder.events.begin(), standing.welder.events.end(), of_event);
}

/// Whether it would qualify by these rules if somebody granted it now, in one process at least.
bool would_qualify_now(Office &office, const GradedTests &tests, const CouponState &coupon,
                       const RangeRules &rules) {
    try {
        const TestEvidence found = evidence(office, tests, coupon, rules);
        return found.impediments.empty() &&
               std::any_of(found.parts.begin(), found.parts.end(),
                           [](const PartEvidence &part) { return part.lacks.empty(); });
    } catch (const Refusal &e) {
        if (e.kind() == Refusal::Kind::record) throw;
        return false;
    }
}

} // namespace

std::vector<WelderStanding::ToQualify> to_qualify(Office &office, const GradedTests &tests,
                                                  const WelderStanding &standing) {
    std::vector<WelderStanding::ToQualify> out;
    for (const auto &test : tests.all()) {
        const CouponRecord &record = test.coupon.record;
        if (!test.passed || !test.day || *test.day > standing.on || is_used(standing, record.id)) continue;
        const auto set = office.criteria_or_none(record.get("criteria"));
        if (!set) continue;
        WelderStanding::ToQualify one{record.id, {}};
        for (const auto &name : shipped_range_rule_names()) {
            const auto rules = office.catalogue().rules(name);
            if (!rules->accepted_by.empty() && rules->accepts(set->name, record.get("class")) &&
                would_qualify_now(office, tests, test.coupon, *rules))
                one.rules.push_back(name);
        }
        if (!one.rules.empty()) out.push_back(std::move(one));
    }
    return out;
}

} // namespace beadbook
