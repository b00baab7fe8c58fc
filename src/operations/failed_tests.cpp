#include "operations/failed_tests.hpp"

#include "operations/failed_by.hpp"
#include "operations/failed_by_others.hpp"
#include "operations/next_retest.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::string by_words(const std::string &set, const std::string &class_id) {
    return print(AcceptedBy{set, class_id.empty() ? std::vector<std::string>{} : std::vector{class_id}, {}});
}

std::string criteria_of(const CouponState &coupon) {
    const StoredVerdict *on = coupon.grade ? coupon.graded_on() : nullptr;
    return on ? by_words(on->set, coupon.grade->class_id)
              : by_words(coupon.record.get("criteria"), coupon.record.get("class"));
}

bool knows_process(const RangeRules &rules, const GradedTests::Test &test) {
    return std::any_of(test.welds.begin(), test.welds.end(), [&](const Weld &weld) {
        return knows_word(rules, Trait::process, true, weld.word(Trait::process));
    });
}

/// Of a test that failed: by which criteria, where those are none of the rules that the welder is to be
/// qualified by; by these it counts all the same.
void tell_criteria(WelderStanding::Failed &one, Office &office, const GradedTests &tests,
                   const GradedTests::Test &test, const WelderState &welder) {
    const CouponRecord &record = test.coupon.record;
    const auto set = office.criteria_or_none(record.get("criteria"));
    if (!set) return;
    if (test.failed_by_others)
        if (const auto then = failed_by_others(office, office.book().history(record.id), test.coupon)) {
            one.criteria = criteria_of(*then);
            one.judged_now = by_words(set->name, record.get("class"));
            return;
        }
    // Of one that was graded failed, what it was graded by: its file may call its set otherwise today.
    const StoredVerdict *on =
        test.coupon.grade && !test.coupon.grade->passed ? test.coupon.graded_on() : nullptr;
    const std::string judged_by = on ? on->set : set->name;
    const std::string by = on ? criteria_of(test.coupon) : by_words(judged_by, record.get("class"));
    if (std::any_of(one.next.begin(), one.next.end(),
                    [](const NextRetest &next) { return !next.takes.empty(); }))
        one.criteria = by;
    if (!one.next.empty()) return;
    std::vector<WelderStanding::Failed::Accepts> others;
    for (const auto &name : shipped_range_rule_names()) {
        const auto rules = office.catalogue().rules(name);
        if (!knows_process(*rules, test)) continue;
        if (may_be_test_by(*rules, record, judged_by, welder) || is_meant_by(*rules, office, tests, welder))
            return; // they ask nothing more of it
        if (rules->accepted_by.empty()) continue;
        others.push_back({name, {}});
        for (const auto &accepted : rules->accepted_by) others.back().by.push_back(print(accepted));
    }
    one.criteria = by;
    one.others = std::move(others);
}

} // namespace

std::vector<WelderStanding::Failed> failed_tests(Office &office, const GradedTests &tests,
                                                 const WelderState &welder, Day on) {
    std::vector<WelderStanding::Failed> out;
    auto next = next_retests(office, tests, welder, on);
    for (const auto &test : tests.all()) {
        const CouponRecord &record = test.coupon.record;
        if (test.day && *test.day > on) continue;
        WelderStanding::Failed one{record.id, record.get("process"), test.day, test.failed_by};
        if (!test.passed_at_all()) {
            one.next = std::move(next[record.id]);
            tell_criteria(one, office, tests, test, welder);
        } else {
            const Grade &grade = *test.coupon.grade;
            if (!grade.after_fail) continue;
            one.by = failed_by(office, office.book().history(record.id), test.coupon, false).methods;
            one.passed_since = grade.stamp.who + (grade.remark.empty() ? "" : ": " + grade.remark);
        }
        out.push_back(std::move(one));
    }
    return out;
}

} // namespace beadbook
