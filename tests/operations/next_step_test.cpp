// The next day that matters to a qualification, by whatever rules: to the day.
#include "catch.hpp"
#include "operations/record_sheet.hpp"
#include "operations/yard.hpp"
#include "report/record_document.hpp"
#include "report/standing_document.hpp"
#include "report/wide.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

constexpr const char *welded = "2025-12-15";

void carried(Yard &yard, const std::string &rules, const std::string &way, const std::string &day = welded) {
    yard.write([&](Writing &w) {
        return carry(w, {"L1",
                         rules,
                         way,
                         {{"units", "mm"},
                          {"process", rules == "iso-9606-1" || rules == "ship-hull" ? "141" : "GTAW"},
                          {"joint", "groove"},
                          {"welded", day}},
                         {"paper.pdf", "paper"}});
    });
}

void used(Yard &yard, const std::string &process, Day day) {
    yard.write([&](Writing &w) { return log_use(w, {"L1", process, day, "frame 12"}); });
}

std::optional<NextStep> step_on(Yard &yard, Day day) {
    return next_step(held_by(yard.office, "L1", day).at(0));
}

/// The only item that the list holds when it looks so far ahead.
std::optional<DueQualification> due_item(Yard &yard, Day on, int days) {
    const DueList list = due(yard.office, days, on);
    REQUIRE(list.items.size() <= 1);
    return list.items.empty() ? std::nullopt : std::optional(list.items[0]);
}

} // namespace

TEST_CASE("the due list shows the last day on which use counts, by every rule set and way", "[standing]") {
    std::size_t tried = 0;
    for (const auto &name : shipped_range_rule_names()) {
        const auto rules = shipped_range_rules(name);
        for (const auto &way : rules->validity) {
            if (!way.use_every) continue;
            INFO(name << ", way " << way.id);
            ++tried;
            const Day start = parse_day(welded), last = use_by(start, way);
            const std::string process = name == "iso-9606-1" || name == "ship-hull" ? "141" : "GTAW";
            const auto ahead = static_cast<int>((last - start).count());
            Yard none, late, in_time;
            for (Yard *yard : {&none, &late, &in_time}) {
                // One way of them holds with the same employer.
                yard->write([](Writing &w) { change_welder(w, {"L1", {}, "the yard", {}, "he was asked"}); });
                carried(*yard, name, way.id);
            }
            // Shown so many days before, and not a day earlier.
            CHECK_FALSE(due_item(none, start, ahead - 1));
            const auto item = due_item(none, start, ahead);
            REQUIRE(item);
            CHECK(item->to_do == ToDo::use);
            CHECK(item->by == last);
            CHECK(item->days_left == ahead);
            CHECK(due_item(none, last, 1)->days_left == 0);
            // A day later it is no longer a use that helps.
            CHECK(step_on(none, last + std::chrono::days{1})->to_do != ToDo::use);

            used(in_time, process, last);
            CHECK(step_on(in_time, last)->by == use_by(last, way));
            used(late, process, last + std::chrono::days{1});
            CHECK(step_on(late, last + std::chrono::days{1})->to_do != ToDo::use);
        }
    }
    CHECK(tried >= 5);
}

TEST_CASE("AWS D17.1: a missed use ends it on the last day of the two years, as is told", "[standing]") {
    // Two years, going on while used within every 6 months: pages that quote 4.2.3.1 and 4.2.3.2 (2001),
    // read.
    Yard yard;
    carried(yard, "aws-d17.1", "two-years");
    const auto first = step_on(yard, parse_day("2025-12-15"));
    REQUIRE(first);
    CHECK(first->by == parse_day("2026-06-15"));
    CHECK(first->otherwise == parse_day("2027-12-15"));
    CHECK(to_do_text(*first) == "use the process and log it, or it ends on 2027-12-15");
    const auto broken = step_on(yard, parse_day("2026-06-16"));
    REQUIRE(broken);
    CHECK(broken->to_do == ToDo::test);
    CHECK(broken->by == parse_day("2027-12-15"));
    CHECK_FALSE(broken->otherwise);
    CHECK(yard.validity(1, "2027-12-15").state == Validity::State::valid);
    CHECK(yard.validity(1, "2027-12-16").state == Validity::State::expired);
    CHECK(step_on(yard, parse_day("2027-12-16"))->to_do == ToDo::test);
    // Beyond the two years only use keeps it.
    Yard kept;
    carried(kept, "aws-d17.1", "two-years", "2024-11-20");
    for (const char *day : {"2025-05-10", "2025-11-05", "2026-05-01", "2026-10-30"})
        used(kept, "GTAW", parse_day(day));
    const auto beyond = step_on(kept, parse_day("2026-11-25"));
    CHECK(beyond->by == parse_day("2027-04-30"));
    CHECK_FALSE(beyond->otherwise);
    CHECK(kept.validity(1, "2027-04-30").state == Validity::State::valid);
    CHECK(kept.validity(1, "2027-05-01").state == Validity::State::expired);
}

TEST_CASE("what comes first is told: the use, then the end that no use moves", "[standing]") {
    // ISO 9606-1 9.3 b: two years and six months of use (from memory in part, see the file).
    Yard yard;
    carried(yard, "iso-9606-1", "b", "2025-01-10");
    for (const char *day : {"2025-07-01", "2025-12-20", "2026-06-10"}) used(yard, "141", parse_day(day));
    CHECK(step_on(yard, parse_day("2026-06-10"))->to_do == ToDo::use);
    CHECK(step_on(yard, parse_day("2026-06-10"))->by == parse_day("2026-12-10"));
    // A use so late that the next one is due on the day of the end does not prolong it.
    used(yard, "141", parse_day("2026-07-10"));
    const auto end = step_on(yard, parse_day("2026-07-10"));
    CHECK(end->by == parse_day("2027-01-10"));
    CHECK(end->to_do == ToDo::extend);
    CHECK_THAT(yard.validity(1).reason,
               says("holds through 2027-01-10; used as of 2025-07-01, 2025-12-20, 2026-06-10 and "
                    "2026-07-10 by entries of 2026-11-25"));
}

TEST_CASE("welder and record print the next day, and what must happen until then", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-06-10");
    yard.qualify("Q-1");
    const auto printed = [&](const char *day) {
        return wide(document_of(standing_of(yard.office, "L1", parse_day(day)))) +
               wide(document_of(record_sheet(yard.office, "L1", 1, parse_day(day))));
    };
    const std::string before = printed("2026-12-10"), after = printed("2026-12-11");
    CHECK_THAT(before, says("- next: by 2026-12-10 use the process and log it"));
    CHECK_THAT(before, says("next            by 2026-12-10 use the process and log it"));
    CHECK_THAT(after, says("- next: renew it: 1 coupon"));
    yard.grade("Q-1", false);
    CHECK(next_step(held_by(yard.office, "L1", parse_day("2026-11-25")).at(0))->to_do == ToDo::test);
}

TEST_CASE("welder and record print both numbers of a rounded end, and on whose word it is rounded",
          "[standing]") {
    Yard yard;
    yard.write([](Writing &w) {
        return carry(w, {"L1",
                         "aws-d17.1",
                         "two-years",
                         {{"units", "in"},
                          {"process", "GTAW"},
                          {"joint", "groove"},
                          {"thickness", "0.045in"},
                          {"welded", "2026-06-10"}},
                         {"paper.pdf", "paper"}});
    });
    const std::string both = "from 0.03 in (computed 0.03015 in) to 0.18 in",
                      word = "rounding method, common practice";
    const std::string welder = wide(document_of(standing_of(yard.office, "L1"))),
                      record = wide(document_of(record_sheet(yard.office, "L1", 1)));
    for (const auto &text : {welder, record}) {
        CHECK_THAT(text, says(both));
        CHECK_THAT(text, says(word));
    }
}

TEST_CASE("at hand for a renewal is a coupon of its process that was welded since it lapsed", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-03-01");
    yard.qualify("Q-1");
    const auto at_hand = [&] {
        const auto items = due(yard.office).items;
        REQUIRE(items.size() == 1);
        REQUIRE(items[0].to_do == ToDo::renew);
        return items[0].at_hand;
    };
    yard.coupon("Q-2", print(*held_by(yard.office, "L1", parse_day("2026-11-25")).at(0).validity.until));
    yard.coupon("Q-3", "2026-11-20", true, {{"process", "SMAW"}, {"filler-group", "F4"}});
    CHECK(at_hand().empty());
    yard.coupon("Q-4", "2026-11-20");
    CHECK(at_hand() == std::vector<std::string>{"Q-4"});
}
