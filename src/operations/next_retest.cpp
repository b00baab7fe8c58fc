#include "operations/next_retest.hpp"

#include "criteria/weld_words.hpp"
#include "operations/shortcoming_words.hpp"
#include "operations/test_likeness.hpp"

#include <algorithm>

namespace beadbook {
namespace {

bool holds_by(const WelderState &welder, const RangeRules &rules) {
    return std::any_of(welder.qualifications.begin(), welder.qualifications.end(),
                       [&](const QualificationRecord &q) { return q.rules == rules.name; });
}

/// What passed after a test of its kind, welded otherwise.
std::vector<NextRetest::Otherwise> passed_otherwise(const RangeRules &rules, const GradedTests &tests,
                                                    const GradedTests::Test &failed, const Weld &weld,
                                                    Day on) {
    std::vector<NextRetest::Otherwise> out;
    for (const auto &test : tests.all()) {
        std::vector<std::string> lacks;
        if (!test.passed_by(rules) || !test.day || *test.day < *failed.day || *test.day > on ||
            same_kind(test.welds, weld, &rules, lacks) != Truth::yes)
            continue;
        for (const auto &one : test.welds) {
            if (!same_process(one.word(Trait::process), weld.word(Trait::process))) continue;
            if (auto in = welded_otherwise(one, {weld}); !in.empty())
                out.push_back({test.coupon.record.id, std::move(in)});
        }
    }
    return out;
}

} // namespace

NextRetest asked_next(const RangeRules &rules, const GradedTests &tests, const GradedTests::Retest &retest) {
    const RetestState &state = retest.state;
    NextRetest out;
    out.rules = rules.name;
    out.trained = !state.after->trained.empty();
    out.training_first = state.training_first;
    if (state.known) out.coupons = state.needed - retest.fit() + 1;
    std::set<std::string> exams;
    if (rules.retest.same_exam)
        for (const auto &id : state.failed)
            if (const auto *failed = tests.find(id))
                exams.insert(failed->failed_by.begin(), failed->failed_by.end());
    out.exams.assign(exams.begin(), exams.end());
    if (rules.retest.after_training) out.after_training = rules.retest.after_training->coupons;
    if (state.known && !state.training_first)
        out.from = state.from;
    else if (rules.retest.after_training)
        out.from = rules.retest.after_training->from;
    return out;
}

std::string exams_words(const NextRetest &next) {
    return next.exams.empty() ? ""
                              : ", examined by " + named_exams(next.exams, "and") +
                                    ", by which it failed, besides what every such test needs";
}

bool may_be_test_by(const RangeRules &rules, const CouponRecord &test, const std::string &set,
                    const WelderState &welder) {
    return rules.accepts(set, test.get("class")) && (!rules.accepted_by.empty() || holds_by(welder, rules));
}

bool is_meant_by(const RangeRules &rules, Office &office, const GradedTests &tests,
                 const WelderState &welder) {
    if (rules.accepted_by.empty()) return false; // it takes any, and may_be_test_by asks what is held
    return holds_by(welder, rules) ||
           std::any_of(tests.all().begin(), tests.all().end(), [&](const GradedTests::Test &test) {
               const CouponRecord &record = test.coupon.record;
               const auto set = office.criteria_or_none(record.get("criteria"));
               return set && rules.accepts(set->name, record.get("class"));
           });
}

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
            const bool takes_it = may_be_test_by(*rules, record, set->name, welder);
            if (test.passed_by(*rules) || (!takes_it && !is_meant_by(*rules, office, tests, welder)))
                continue;
            for (const auto &weld : test.welds) {
                if (!knows_word(*rules, Trait::process, true, weld.word(Trait::process))) continue;
                const auto retest = tests.retest_of({}, on, weld, *rules);
                if (!retest.state.after || retest.state.after->coupon != record.id) continue;
                out[record.id].push_back(asked_next(*rules, tests, retest));
                if (!takes_it)
                    for (const auto &accepted : rules->accepted_by)
                        out[record.id].back().takes.push_back(print(accepted));
                out[record.id].back().otherwise = passed_otherwise(*rules, tests, test, weld, on);
                if (test.welds.size() > 1) out[record.id].back().process = weld.word(Trait::process);
            }
        }
    }
    return out;
}

} // namespace beadbook
