#include "operations/held_work.hpp"

#include "measure/text.hpp"
#include "operations/carried_in.hpp"
#include "operations/shortcoming_words.hpp"

namespace beadbook {
namespace {

/// Tests of the plan that the welder failed before: the rules ask more of the next.
void tell_retests(Office &office, const std::string &mark, Day on, PlanResult &plan) {
    if (plan.tests.empty()) return;
    const GradedTests tests(office, office.book().welder(mark));
    for (auto &planned : plan.tests) {
        const RetestState state = tests.retest_of({}, on, planned.coupon.test, *plan.work.rules).state;
        const auto lack = retest_lack(state);
        if (!lack || !state.after) continue;
        const bool known = lack->kind == Shortcoming::Kind::retest;
        if (known) planned.must_pass = state.needed;
        planned.after_failure =
            words_of(*state.after) +
            (known ? "; as a retest, " + counted(static_cast<std::size_t>(state.needed), "coupon") +
                         " of it must pass"
             : state.training_first ? "; further training comes first"
                                    : "; what the rules ask after a failure is not known here");
    }
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
    const auto held = held_tests(held_by(office, request.welder, on));
    auto plan = plan_work(office.catalogue(), request.plan, held);
    tell_retests(office, request.welder, on, plan.value);
    return {{request.welder, on, std::move(plan.value)}, std::move(plan.notes)};
}

} // namespace beadbook
