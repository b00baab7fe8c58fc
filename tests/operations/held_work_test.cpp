#include "catch.hpp"
#include "operations/held_work.hpp"

#include "yard.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// Work that the yard's test (GTAW in 6G) covers, and work of a process that it does not.
const std::string work_text = R"(rules: asme-ix
units: in
work:
  - {id: pipe, joint: groove, form: tube, process: GTAW, metal group: P1, filler group: F6,
     backing: without, position: [F, V], diameter: 4, weld thickness: 0.2, progression: up}
  - {id: frame, joint: groove, form: plate, process: SMAW, metal group: P1, filler group: F4, backing: with,
     position: F, weld thickness: 0.2, progression: up}
)";

HeldWorkRequest on(const std::string &day) {
    return {"L1", parse_day(day), {{"typed work", work_text}, "", ""}};
}

} // namespace

TEST_CASE("work that a welder holds is taken off while the qualification is valid, and planned again after") {
    Yard yard;
    yard.coupon("Q-1", "2026-10-05");
    yard.qualify("Q-1");
    const auto now = held_work(yard.office, on("2026-11-25")).value;
    CHECK(now.welder == "L1");
    CHECK(now.on == parse_day("2026-11-25"));
    REQUIRE(now.plan.held.size() == 1);
    CHECK(now.plan.held[0].number == 1);
    CHECK(now.plan.held[0].validity.state == Validity::State::valid);
    CHECK(now.plan.held_jobs == std::vector<std::string>{"pipe"});
    REQUIRE(now.plan.missed.size() == 1);
    CHECK(now.plan.missed[0].job == "frame");
    CHECK(now.plan.missed[0].number == 1);
    // Six months without welding: ASME IX QW-322.1, read.
    const auto later = held_work(yard.office, on("2027-06-01")).value;
    CHECK(later.plan.held.at(0).validity.state == Validity::State::lapsed);
    CHECK(later.plan.held_jobs.empty());
    CHECK(later.plan.missed.empty());
    CHECK(now.plan.tests.size() == 1);
    CHECK(later.plan.tests.size() == 2);
}

TEST_CASE("without a day it is asked for today; a welder must be enrolled") {
    Yard yard;
    CHECK(held_work(yard.office, {"L1", {}, {{"typed work", work_text}, "", ""}}).value.on ==
          parse_day("2026-11-25"));
    CHECK_THROWS_AS(held_work(yard.office, {"L9", {}, {{"typed work", work_text}, "", ""}}), DataError);
}
