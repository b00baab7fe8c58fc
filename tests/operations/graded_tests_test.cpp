// Tests that passed or failed, as retest rules look at them.
#include "catch.hpp"
#include "operations/learner.hpp"
#include "operations/yard.hpp"

using namespace beadbook;
using namespace beadbook::test;

TEST_CASE("after a failed test two coupons must pass, or one after training", "[standing]") {
    // ASME BPVC Section IX QW-321.2 (read: twice the coupons) and QW-321.3 (from memory).
    Yard yard;
    yard.coupon("Q-1", "2026-10-05", false);
    yard.coupon("Q-2", "2026-10-06");
    CHECK_THAT(refused_to_qualify(yard, "Q-2"),
               says("coupon Q-1 failed on 2026-10-05: 2 coupons must pass, 1 did [QW-321.2, read]"));
    // Another position is another kind of test.
    yard.coupon("Q-5", "2026-10-06", true, {{"position", "2G"}});
    yard.qualify("Q-5");
    yard.coupon("Q-3", "2026-10-06");
    const auto granted = yard.qualify("Q-3").value;
    CHECK(granted.held[0].record.number == 2);
    CHECK(granted.held[0].record.evidence->coupons == std::vector<std::string>{"Q-2", "Q-3"});

    Yard other;
    other.coupon("Q-1", "2026-10-05", false);
    other.write([](Writing &w) {
        return log_training(w, {"L1", "GTAW", parse_day("2026-10-08"), "root runs"});
    });
    other.coupon("Q-2", "2026-10-12");
    other.qualify("Q-2");
}

TEST_CASE("the coupon that passed with it must have been examined too, and bends that opened are a failure",
          "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-10-05", true, {{"mechanical", "failed"}}); // graded passed before the bends
    yard.coupon("Q-2", "2026-10-06", true, {}, {Exam::VT});
    yard.coupon("Q-3", "2026-10-07");
    const std::string refused = refused_to_qualify(yard, "Q-3");
    CHECK_THAT(refused, says("coupon Q-2: no RT or mechanical tests"));
    CHECK_THAT(refused, !says("must pass"));
}

TEST_CASE("practice coupons neither qualify nor count as failed tests", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-10-05", false, {{"purpose", "practice"}});
    yard.coupon("Q-2", "2026-10-06", true, {{"purpose", "practice"}});
    CHECK_THAT(refused_to_qualify(yard, "Q-2"), says("was welded for practice"));
    yard.coupon("Q-3", "2026-10-07", true, {{"purpose", "test"}});
    yard.qualify("Q-3");
}

TEST_CASE("tests of another welder say nothing", "[standing]") {
    Yard yard;
    yard.coupon("Q-2", "2026-10-06", false, {{"welder", "L2"}});
    yard.coupon("Q-3", "2026-10-07");
    yard.qualify("Q-3");
}

TEST_CASE("what failed under one welder and passed under another is no pass of the first", "[standing]") {
    Yard yard;
    yard.coupon("Q-0", "2026-10-04", false);
    yard.coupon("Q-1", "2026-10-05", false);
    yard.change("Q-1", {{"welder", "L2"}});
    yard.grade("Q-1", true);
    yard.coupon("Q-2", "2026-10-06");
    yard.coupon("Q-3", "2026-10-07");
    // Two coupons are asked after is not one of them.
    CHECK_THAT(refused_to_qualify(yard, "Q-2"), says("2 coupons must pass, 1 did"));
    yard.qualify("Q-3");
}

TEST_CASE("a failed test stays one, of whom and by what it was when it failed", "[standing]") {
    for (const auto &[field, value] : {std::pair{"welder", "L2"}, std::pair{"process", "GTAW"}}) {
        INFO(field);
        Yard yard;
        yard.coupon("Q-1", "2026-10-05", false, {{"process", "SMAW"}});
        yard.change("Q-1", {{field, value}});
        yard.coupon("Q-3", "2026-10-07", true, {{"process", "SMAW"}});
        CHECK_THAT(refused_to_qualify(yard, "Q-3"), says("coupon Q-1 failed on 2026-10-05"));
    }
}

TEST_CASE("the page of a learner tells a failed test that is said to be another's since", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-10-05", false);
    yard.coupon("Q-2", "2026-10-06");
    Selection of;
    of.welder = "L1";
    CHECK(learner_of(yard.office, of).said_of_another.empty());
    yard.change("Q-1", {{"welder", "L2"}});
    const Learner learner = learner_of(yard.office, of);
    REQUIRE(learner.said_of_another.size() == 1);
    CHECK(learner.said_of_another[0].coupon == "Q-1");
    CHECK(learner.said_of_another[0].welder == "L2");
    CHECK(learner.coupons.size() == 1);
}
