#include "operations/held_work.hpp"

#include "criteria/weld_words.hpp"
#include "measure/text.hpp"
#include "operations/failed_in_range.hpp"
#include "operations/next_retest.hpp"
#include "operations/shortcoming_words.hpp"
#include "operations/to_qualify.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Tests of the plan that the welder failed before: the rules ask more of the next.
void tell_retests(const GradedTests &tests, Day on, PlanResult &plan) {
    for (auto &planned : plan.tests) {
        const auto retest = tests.retest_of({}, on, planned.coupon.test, *plan.work.rules);
        if (!retest.state.after) continue;
        const NextRetest next = asked_next(*plan.work.rules, tests, retest);
        const bool known = next.coupons > 0 && !next.training_first;
        if (known && next.coupons == 1 && next.exams.empty()) continue; // as any test
        if (known) planned.must_pass = next.coupons;
        planned.after_failure =
            words_of(*retest.state.after) +
            (known ? "; as a retest, " + counted(static_cast<std::size_t>(next.coupons), "coupon") +
                         " of it must pass" + exams_words(next)
             : next.training_first ? "; further training comes first"
                                   : "; what the rules ask after a failure is not known here");
    }
}

std::vector<WelderStanding::Failed> open_failures(const GradedTests &tests, Day on, const PlanResult &plan) {
    std::vector<WelderStanding::Failed> out;
    for (const auto &failed : tests.all()) {
        if (failed.passed_by(*plan.work.rules) || (failed.day && *failed.day > on)) continue;
        const auto of_work = [&](const std::string &process) {
            return std::any_of(plan.work.jobs.begin(), plan.work.jobs.end(), [&](const Job &job) {
                const auto &words = job.words[index_of(Trait::process)];
                return process.empty() ||
                       std::any_of(words.begin(), words.end(),
                                   [&](const std::string &word) { return same_process(process, word); });
            });
        };
        // As whatever it was said to be it failed, by each of its processes.
        const auto open = std::find_if(failed.welds.begin(), failed.welds.end(), [&](const Weld &weld) {
            return of_work(weld.word(Trait::process)) &&
                   no_retest_done(tests, failed, weld, *plan.work.rules, on);
        });
        if (open != failed.welds.end())
            out.push_back(
                {failed.coupon.record.id, open->word(Trait::process), failed.day, failed.failed_by});
    }
    return out;
}

/// A pass that nobody granted yet may save a coupon.
void note_to_qualify(const std::vector<WelderStanding::ToQualify> &passed, const std::string &rules,
                     std::vector<std::string> &notes) {
    for (const auto &one : passed)
        if (std::find(one.rules.begin(), one.rules.end(), rules) != one.rules.end())
            notes.push_back(
                "coupon " + one.coupon +
                " was graded passed and qualifies nothing yet: the instructor qualifies by it next, by " +
                rules);
}

} // namespace

std::vector<HeldTest> held_tests(const std::vector<HeldQualification> &held) {
    std::vector<HeldTest> out;
    for (const auto &one : held) {
        out.push_back({one.record.number, one.rules, one.weld, one.record.test.unit(), one.validity,
                       one.range, one.aside, one.record.carried(), one.renewed_by});
        if (one.record.carried()) out.back().validity.reason += "; carried in with a paper";
    }
    return out;
}

Done<HeldWork> held_work(Office &office, const HeldWorkRequest &request) {
    const Day on = request.on.value_or(office.outside().today());
    const WelderStanding standing = standing_of(office, office.book().welder(request.welder), on);
    auto plan = plan_work(office.catalogue(), request.plan, held_tests(standing.held));
    const GradedTests tests(office, standing.welder);
    note_to_qualify(to_qualify(office, tests, standing), plan.value.work.rules->name, plan.notes);
    tell_retests(tests, on, plan.value);
    auto failed = open_failures(tests, on, plan.value);
    return {{request.welder, on, std::move(plan.value), std::move(failed)}, std::move(plan.notes)};
}

} // namespace beadbook
