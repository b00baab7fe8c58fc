#include "catch.hpp"
#include "qualify/retest.hpp"
#include "qualify/validity.hpp"

#include <algorithm>

using namespace beadbook;

namespace {

using Kind = QualificationEvent::Kind;
using State = Validity::State;

ValidityWay way(const std::string &lasts, const std::string &use_every, bool kept = false) {
    ValidityWay out;
    if (!lasts.empty()) out.lasts = parse_period(lasts);
    if (!use_every.empty()) out.use_every = parse_period(use_every);
    out.kept_by_use = kept;
    return out;
}

Validity on(const std::string &day, const ValidityWay &w, std::vector<QualificationEvent> events = {},
            const std::string &welded = "2026-01-10") {
    return validity_on(parse_day(day), parse_day(welded), w, std::move(events));
}

QualificationEvent event(Kind kind, const std::string &day) { return {kind, parse_day(day)}; }

} // namespace

TEST_CASE("a period holds through its last day and is over on the next") {
    CHECK(on("2026-07-10", way("", "6 months")).state == State::valid);
    CHECK(on("2026-07-11", way("", "6 months")).state == State::lapsed);
    CHECK(on("2028-01-10", way("2 years", "")).state == State::valid);
    CHECK(on("2028-01-11", way("2 years", "")).state == State::expired);
    CHECK(on("2026-01-09", way("2 years", "")).state == State::not_begun);
    CHECK(on("2026-01-10", way("2 years", "")).state == State::valid);
    // 2026-08-31 + 6 months.
    CHECK(on("2027-02-28", way("", "6 months"), {}, "2026-08-31").state == State::valid);
    CHECK(on("2027-03-01", way("", "6 months"), {}, "2026-08-31").state == State::lapsed);
    CHECK(on("2199-01-01", way("", "")).state == State::valid);
    CHECK_FALSE(on("2199-01-01", way("", "")).until);
}

TEST_CASE("what a use keeps says when its period is over") {
    CHECK(on("2026-02-01", way("3 years", "6 months")).reason ==
          "holds through 2026-07-10, longer if it is used by then, at most through 2029-01-10");
    CHECK(on("2026-02-01", way("", "6 months")).reason ==
          "holds through 2026-07-10, longer if it is used by then");
}

TEST_CASE("use carries on from use to use; one late use does not bring it back") {
    const auto w = way("", "6 months");
    CHECK(on("2027-01-10", w, {event(Kind::use, "2026-07-10")}).state == State::valid);
    CHECK(on("2027-01-10", w, {event(Kind::use, "2026-07-11")}).state == State::lapsed);
    CHECK(on("2027-01-10", w, {event(Kind::use, "2026-07-11")}).until == parse_day("2026-07-10"));
    CHECK(on("2026-09-01", w, {event(Kind::use, "2026-06-01")}).use_by == parse_day("2026-12-01"));
    // What happens after the day asked, or happened before the test, does not count.
    CHECK(on("2026-08-01", w, {event(Kind::use, "2026-09-01")}).state == State::lapsed);
    CHECK(on("2026-08-01", w, {event(Kind::use, "2025-12-01")}).state == State::lapsed);
}

TEST_CASE("a renewal brings a lapsed one back, but not an expired or a revoked one") {
    const auto w = way("", "6 months");
    CHECK(on("2026-12-01", w, {event(Kind::renewal, "2026-11-01")}).state == State::valid);
    CHECK(on("2026-12-01", w, {event(Kind::renewal, "2026-11-01")}).until == parse_day("2027-05-01"));
    CHECK(on("2028-02-01", way("2 years", "6 months"), {event(Kind::renewal, "2028-01-20")}).state ==
          State::expired);
    CHECK(on("2026-12-01", w, {event(Kind::revocation, "2026-03-01"), event(Kind::renewal, "2026-11-01")})
              .state == State::revoked);
    CHECK(on("2026-02-28", w, {event(Kind::revocation, "2026-03-01")}).state == State::valid);
}

TEST_CASE("with both periods, the one that ended first is told") {
    const auto w = way("3 years", "6 months");
    CHECK(on("2029-06-01", w).state == State::lapsed);
    std::vector<QualificationEvent> uses;
    for (const char *day :
         {"2026-07-01", "2026-12-20", "2027-06-15", "2027-12-01", "2028-05-20", "2028-11-10"})
        uses.push_back(event(Kind::use, day));
    CHECK(on("2029-01-10", w, uses).state == State::valid);
    CHECK(on("2029-01-10", w, uses).until == parse_day("2029-01-10"));
    CHECK(on("2029-01-11", w, uses).state == State::expired);
}

TEST_CASE("the order in which events were logged does not matter") {
    const auto w = way("3 years", "6 months");
    std::vector<QualificationEvent> events;
    for (const char *day : {"2026-06-01", "2026-11-01", "2027-04-01"})
        events.push_back(event(Kind::use, day));
    events.push_back(event(Kind::renewal, "2028-01-01"));
    const Validity first = on("2028-06-01", w, events);
    CHECK(first.state == State::valid);
    for (int i = 0; i < 24; ++i) {
        std::next_permutation(events.begin(), events.end(),
                              [](const auto &a, const auto &b) { return a.day < b.day; });
        const Validity again = on("2028-06-01", w, events);
        CHECK(again.state == first.state);
        CHECK(again.until == first.until);
    }
}

TEST_CASE("retests: rules that say nothing satisfy nobody, a satisfied test is done with") {
    using A = Attempt::Kind;
    const Day day = parse_day("2026-10-01");
    const RetestState silent = retest_state({}, {{A::failed, day, "A"}, {A::passed, day, "B"}});
    CHECK_FALSE(silent.known);
    CHECK_FALSE(silent.satisfied());
    CHECK(retest_state({}, {{A::passed, day, "A"}, {A::passed, day, "B"}}).satisfied());
    // Once a person has settled it, the next test is a new one; training does not settle what no rule speaks
    // of.
    CHECK(retest_state({}, {{A::failed, day, "A"}, {A::passed, day, "B", true}, {A::passed, day, "C"}})
              .satisfied());
    CHECK_FALSE(
        retest_state({}, {{A::failed, day, "A"}, {A::trained, day, ""}, {A::passed, day, "B"}}).satisfied());
    CHECK_FALSE(retest_state({}, {{A::failed, day, "A"}}).satisfied());
    RetestRules rules;
    rules.immediate = CouponsAsked{2, {"c", {}}};
    const RetestState state = retest_state(
        rules, {{A::failed, day, "A"}, {A::passed, day, "B"}, {A::passed, day, "C"}, {A::passed, day, "D"}});
    CHECK(state.satisfied());
    CHECK(state.passed == std::vector<std::string>{"D"});
    CHECK_FALSE(state.after);
    const RetestState again = retest_state(rules, {{A::failed, day, "A"}, {A::failed, day, "B"}});
    CHECK(again.failed == std::vector<std::string>{"A", "B"});
    CHECK(again.after->coupon == "B");
    CHECK(again.needed == 4);
    // Training counts from the day on that follows the one on which all that failed before it was seen.
    rules.after_training = CouponsAsked{1, {"t", {}}};
    const auto trained = [&](int days, std::optional<Day> seen) {
        return retest_state(rules, {{A::failed, day, "A", false, {}, seen},
                                    {A::trained, day + std::chrono::days(days), ""},
                                    {A::passed, day + std::chrono::days(30), "B"}})
            .satisfied();
    };
    CHECK_FALSE(trained(0, {}));
    CHECK(trained(1, {}));
    CHECK_FALSE(trained(1, day + std::chrono::days(9)));
    CHECK_FALSE(trained(9, day + std::chrono::days(9)));
    CHECK(trained(10, day + std::chrono::days(9)));
    // One that failed afterwards, as its welder knew of the first alone, is seen later than both.
    CHECK_FALSE(
        retest_state(rules,
                     {{A::failed, day, "A", false, {}, day + std::chrono::days(1)},
                      {A::failed, day + std::chrono::days(2), "B", false, {}, day + std::chrono::days(20)},
                      {A::trained, day + std::chrono::days(3), ""},
                      {A::passed, day + std::chrono::days(30), "C"}})
            .satisfied());
    rules.after_training.reset();
    // Training without a failure changes nothing.
    CHECK(retest_state(rules, {{A::trained, day, ""}, {A::passed, day, "B"}}).satisfied());
}
