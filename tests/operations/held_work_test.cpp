#include "catch.hpp"
#include "operations/held_work.hpp"
#include "render/json_planning.hpp"
#include "render/text.hpp"
#include "report/plan_document.hpp"

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
    REQUIRE(now.plan.jobs.size() == 2);
    CHECK(now.plan.jobs[0].allowed == Truth::yes);
    CHECK(now.plan.jobs[0].by == std::vector<int>{1});
    CHECK(now.plan.jobs[1].allowed == Truth::no);
    CHECK(now.plan.allows_all() == Truth::no);
    // One coupon renews it (QW-322.2(a); one coupon was read), so no test is asked for the pipe.
    CHECK(later.plan.jobs.at(0).allowed == Truth::no);
    REQUIRE(later.plan.jobs[0].renewals.size() == 1);
    CHECK(later.plan.jobs[0].renewals[0].number == 1);
    CHECK(later.plan.jobs[0].renewals[0].coupons == 1);
    REQUIRE(later.plan.tests.size() == 1);
    CHECK(later.plan.ids(later.plan.tests[0].coupon.jobs) == std::vector<std::string>{"frame"});
}

TEST_CASE("to the day: allowed on the last one, renewed from the next; all jobs may come back by renewal") {
    Yard yard;
    yard.coupon("Q-1", "2026-06-10");
    yard.qualify("Q-1");
    HeldWorkRequest only = on("2026-12-10");
    only.plan.work.text = work_text.substr(0, work_text.find("  - {id: frame"));
    const auto last = held_work(yard.office, only).value;
    CHECK(last.plan.allows_all() == Truth::yes);
    only.on = parse_day("2026-12-11");
    const auto next = held_work(yard.office, only).value;
    CHECK(next.plan.allows_all() == Truth::no);
    CHECK(next.plan.jobs.at(0).renewals.size() == 1);
    CHECK(next.plan.tests.empty());
    CHECK(next.plan.covers_all() == Truth::yes);
}

TEST_CASE("who holds nothing may do nothing; a datum that the work lacks is named") {
    Yard yard;
    CHECK(held_work(yard.office, on("2026-11-25")).value.plan.allows_all() == Truth::no);
    yard.coupon("Q-1", "2026-10-05");
    yard.qualify("Q-1");
    HeldWorkRequest open = on("2026-11-25");
    std::string text = work_text.substr(0, work_text.find("  - {id: frame"));
    text.erase(text.find(", diameter: 4"), 13);
    open.plan.work.text = text;
    const auto answer = held_work(yard.office, open).value.plan.jobs.at(0);
    CHECK(answer.allowed == Truth::unknown);
    CHECK(answer.lacks == std::vector<Lack>{{Trait::diameter, Lack::Of::work}});
}

TEST_CASE("without a day it is asked for today; a welder must be enrolled") {
    Yard yard;
    CHECK(held_work(yard.office, {"L1", {}, {{"typed work", work_text}, "", ""}}).value.on ==
          parse_day("2026-11-25"));
    CHECK_THROWS_AS(held_work(yard.office, {"L9", {}, {{"typed work", work_text}, "", ""}}), Refusal);
}

TEST_CASE("a coupon that is proposed to a welder who failed such a test tells how many must pass") {
    Yard yard;
    HeldWorkRequest all = on("2026-11-25");
    all.plan.work.text = R"(rules: asme-ix
units: in
work:
  - {id: pipe, joint: groove, form: tube, process: GTAW, metal group: P1, filler group: F6,
     backing: without, position: [F, H, V, O], diameter: 4, weld thickness: 0.2, progression: up}
)";
    const auto first = held_work(yard.office, all).value;
    CHECK(first.plan.tests.at(0).must_pass == 1);
    CHECK_THAT(text(document_of(first), Paint(false), 1000), says("1 coupon to weld by"));
    yard.coupon("Q-1", "2026-10-05", false);
    const auto retest = held_work(yard.office, all).value;
    CHECK(retest.plan.tests.at(0).must_pass == 2);
    const std::string told = text(document_of(retest), Paint(false), 1000);
    CHECK_THAT(told, says("2 coupons to weld, of 1 kind, by"));
    CHECK_THAT(told, says("coupon Q-1 failed on 2026-10-05; as a retest, 2 coupons of it must pass"));
    const std::string json = json_text(retest);
    CHECK_THAT(json, says("must pass"));
    CHECK_THAT(json, says("coupon Q-1 failed on 2026-10-05; as a retest, 2 coupons of it must pass"));
}

TEST_CASE("a coupon that passed and that nobody qualified by yet is named beside the answer") {
    Yard yard;
    yard.coupon("Q-1", "2026-10-05");
    const auto before = held_work(yard.office, on("2026-11-25"));
    CHECK(before.value.plan.allows_all() == Truth::no);
    CHECK(std::count(before.notes.begin(), before.notes.end(),
                     "coupon Q-1 was graded passed and qualifies nothing yet: the instructor qualifies by it "
                     "next, by asme-ix") == 1);
    yard.qualify("Q-1");
    for (const auto &note : held_work(yard.office, on("2026-11-25")).notes)
        CHECK(note.find("qualifies nothing yet") == std::string::npos);
}

TEST_CASE("a failure stays open until what would qualify follows it, whatever was graded passed since",
          "[standing]") {
    Yard yard;
    const auto open = [&] { return held_work(yard.office, on("2026-11-25")).value.failed.size(); };
    yard.coupon("Q-1", "2026-10-05", false);
    CHECK(open() == 1);
    // Passed by a person, though nobody looked inside: QW-302.2 asks bends or a film.
    yard.coupon("Q-2", "2026-10-06", true, {}, {Exam::VT, Exam::MT});
    yard.coupon("Q-3", "2026-10-07", true, {}, {Exam::VT, Exam::MT});
    CHECK_THAT(refused_to_qualify(yard, "Q-3"), says("coupon Q-2: "));
    CHECK(open() == 1);
    // QW-321.2, read: twice the coupons.
    yard.coupon("Q-4", "2026-10-08");
    CHECK(open() == 1);
    yard.coupon("Q-5", "2026-10-09");
    CHECK(open() == 0);
    CHECK(refused_to_qualify(yard, "Q-5").empty());
}

TEST_CASE("what failed is open by each process that it was said to be of", "[standing]") {
    Yard yard;
    HeldWorkRequest pipe = on("2026-11-25");
    pipe.plan.work.text = work_text.substr(0, work_text.find("  - {id: frame"));
    const auto open = [&] { return held_work(yard.office, pipe).value.failed; };
    yard.coupon("Q-1", "2026-10-05", false);
    yard.change("Q-1", {{"process", "SMAW"}});
    REQUIRE(open().size() == 1);
    CHECK(open()[0].process == "GTAW");
    // The retest in the process that it was welded by is done, and no job is of the other.
    yard.coupon("Q-2", "2026-10-08");
    yard.coupon("Q-3", "2026-10-09");
    CHECK(open().empty());
}

TEST_CASE("training that was entered after a retest was graded closes no failure before it", "[standing]") {
    Yard yard;
    const auto open = [&] { return held_work(yard.office, on("2026-11-25")).value.failed.size(); };
    yard.coupon("Q-1", "2026-10-05", false);
    yard.coupon("Q-2", "2026-10-08");
    CHECK(open() == 1); // of two
    yard.write([](Writing &w) {
        return log_training(w, {"L1", "GTAW", parse_day("2026-10-06"), "8 h of roots"});
    });
    CHECK_FALSE(refused_to_qualify(yard, "Q-2").empty());
    CHECK(open() == 1);
}
