#include "operations/next_retest.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Whether a test by these criteria may be one of these rules.
bool may_be_meant(const RangeRules &rules, const CouponRecord &test, const std::string &set,
                  const WelderState &welder) {
    if (!rules.accepts(set, test.get("class"))) return false;
    return !rules.accepted_by.empty() ||
           std::any_of(welder.qualifications.begin(), welder.qualifications.end(),
                       [&](const QualificationRecord &q) { return q.rules == rules.name; });
}

/// As the next coupon of its kind would find it: it is counted as one that passed.
NextRetest asked_next(const RangeRules &rules, const RetestState &state) {
    NextRetest out;
    out.rules = rules.name;
    out.trained = !state.after->trained.empty();
    out.training_first = state.training_first;
    if (state.known) out.coupons = state.needed - static_cast<int>(state.passed.size()) + 1;
    if (rules.retest.after_training) out.after_training = rules.retest.after_training->coupons;
    if (state.known && !state.training_first)
        out.from = state.from;
    else if (rules.retest.after_training)
        out.from = rules.retest.after_training->from;
    return out;
}

} // namespace

std::map<std::string, std::vector<NextRetest>> next_retests(Office &office, const GradedTests &tests,
                                                            const WelderState &welder, Day on) {
    std::map<std::string, std::vector<NextRetest>> out;
    for (const auto &test : tests.all()) {
        const CouponRecord &record = test.coupon.record;
        if (!test.day || *test.day > on) continue;
        const auto set = office.criteria_or_none(record.get("criteria"));
        if (!set) continue;
        for (const auto &name : shipped_range_rule_names()) {
            const auto rules = office.catalogue().rules(name);
            if (test.passed_by(*rules) || !may_be_meant(*rules, record, set->name, welder)) continue;
            for (const auto &weld : test.welds) {
                if (!knows_word(*rules, Trait::process, true, weld.word(Trait::process))) continue;
                const RetestState state = tests.retest_of({}, on, weld, *rules).state;
                if (!state.after || state.after->coupon != record.id) continue;
                out[record.id].push_back(asked_next(*rules, state));
                if (test.welds.size() > 1) out[record.id].back().process = weld.word(Trait::process);
            }
        }
    }
    return out;
}

} // namespace beadbook
