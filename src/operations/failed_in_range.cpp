#include "operations/failed_in_range.hpp"

#include "criteria/weld_words.hpp"
#include "measure/text.hpp"
#include "operations/test_likeness.hpp"
#include "operations/unjudged_finds.hpp"

#include <algorithm>
#include <set>

namespace beadbook {

bool no_retest_done(const GradedTests &tests, const GradedTests::Test &failed, const Weld &weld,
                    const RangeRules &rules, Day on) {
    if (!failed.day) return true; // nobody can tell what followed it
    std::set<Day> looked_at{on};
    for (const auto &later : tests.all())
        if (!later.passed_by(rules) && later.day && *later.day > *failed.day && *later.day <= on)
            looked_at.insert(*later.day - std::chrono::days(1));
    return std::all_of(looked_at.begin(), looked_at.end(), [&](Day day) {
        return tests.retest_of({}, day, weld, rules).state.after.has_value();
    });
}

void tell_failed_in_range(const GradedTests &tests, Day on, HeldQualification &held) {
    if (!held.unreadable.empty()) return;
    const RangeRules &rules = *held.rules;
    for (const auto &failed : tests.all()) {
        if (failed.passed_by(rules) || (failed.day && *failed.day > held.record.welded)) continue;
        std::vector<std::string> lacks;
        // One of its own kind is asked for by the rules themselves.
        if (retests(failed.welds, held.weld, &rules, lacks) != Truth::no) continue;
        const auto open = [&](const Weld &weld) { return no_retest_done(tests, failed, weld, rules, on); };
        const std::string failed_on = " failed" + (failed.day ? " on " + print(*failed.day) : "");
        if (same_kind(failed.welds, held.weld, &rules, lacks) == Truth::yes) {
            const auto open_there = [&](const Weld &weld) {
                return same_process(weld.word(Trait::process), held.weld.word(Trait::process)) && open(weld);
            };
            if (std::any_of(failed.welds.begin(), failed.welds.end(), open_there))
                held.validity.caution("coupon " + failed.coupon.record.id + failed_on +
                                      ", and what this rests on is no retest of it, as it was welded "
                                      "otherwise and may be the easier test: " +
                                      joined(welded_otherwise(held.weld, failed.welds), "; ") +
                                      "; no retest is done with that (common practice, no source)");
            continue;
        }
        std::string words;
        const Weld *of = nullptr;
        for (const auto &weld : failed.welds)
            if (takes_in(rules, held.weld, weld) && open(weld)) {
                words = ", which its range takes in";
                of = &weld;
                break;
            }
        for (const auto &weld : failed.welds) {
            if (of) break;
            const auto some = takes_some(rules, held.weld, weld);
            if (some.empty() || !open(weld)) continue;
            words = ", and its range takes in some of what that was to qualify for, " + listed(some, "and");
            of = &weld;
        }
        if (!of) continue;
        held.validity.caution("coupon " + failed.coupon.record.id + failed_on + " in position " +
                              of->word(Trait::position) + words +
                              ", and no retest is done with that (common practice, no source)");
    }
    for (const auto &test : tests.unjudged()) {
        if (test.day && *test.day > held.record.welded) continue;
        std::vector<std::string> lacks;
        if (same_kind(test.welds, held.weld, &rules, lacks) != Truth::no) continue;
        for (const auto &weld : test.welds)
            if (takes_in(rules, held.weld, weld)) {
                held.validity.caution("coupon " + test.coupon.record.id + ", in position " +
                                      weld.word(Trait::position) + ", which its range takes in, shows " +
                                      listed(unjudged_finds(test.coupon, {}), "and") +
                                      ", and is neither judged by criteria that it names nor graded, so it "
                                      "may have failed (common practice, no source)");
                break;
            }
    }
}

} // namespace beadbook
