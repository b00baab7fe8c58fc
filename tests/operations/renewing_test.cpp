// renew: a lapsed qualification by coupons.
#include "catch.hpp"
#include "operations/shortcoming_words.hpp"
#include "operations/yard.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::string refused_to_renew(Yard &yard, int number, const std::vector<std::string> &coupons) {
    return yard.refusal([&] { renewed(yard, number, coupons); });
}

/// One qualification by rules of two coupons for a renewal, lapsed since 2025-12-10.
void two_coupon_rules(Yard &yard) {
    write_file(yard.file("two.yaml"),
               "rules: two\ntitle: t\nedition: e\nunits: in\nvariables: [thickness]\n"
               "ranges: [{id: a, of: thickness, allows: same, clause: c, standing: {house: x}}]\n"
               "examinations: [{id: v, one of: [VT], clause: \"5\", standing: {house: x}}]\n"
               "validity: [{id: v, use every: 6 months, clause: c, standing: {house: x}}]\n"
               "renewal: {coupons: 2, clause: \"8\", standing: {house: x}}\n");
    yard.coupon("Q-1", "2025-06-10");
    yard.qualify("Q-1", yard.file("two.yaml"));
}

} // namespace

TEST_CASE("a lapsed qualification comes back by one coupon, where its rules say so", "[standing]") {
    // QW-322.2(a): one coupon (read), which restores all ranges of the process (from memory).
    Yard yard;
    yard.coupon("Q-1", "2025-06-10");
    yard.qualify("Q-1");
    CHECK_THAT(refused_to_renew(yard, 1, {"Q-1"}), says("was welded on 2025-06-10, before it lapsed"));
    yard.coupon("Q-2", "2026-11-20", true, {{"position", "1G"}});
    const auto done = renewed(yard, 1, {"Q-2"});
    CHECK(done.value.now.validity.state == Validity::State::valid);
    CHECK(done.value.now.validity.until == parse_day("2027-05-20"));
    CHECK(done.value.event.evidence.at(0).coupon == "Q-2");
    CHECK(done.value.event.seq > 0);
    CHECK_THAT(refused_to_renew(yard, 1, {"Q-2"}), says("is valid, not lapsed"));
    yard.coupon("Q-3", "2021-06-10", true, {{"metal-group", ""}});
    yard.qualify("Q-3", "mil-std-1595a");
    CHECK_THAT(refused_to_renew(yard, 2, {"Q-2"}), says("nothing renews"));
    CHECK_THAT(yard.refusal([&] { renewed(yard, 1, {}); }), says("by which coupon?"));
}

TEST_CASE("renewal refuses what qualification refuses", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2025-06-10");
    yard.qualify("Q-1");
    yard.coupon("P-1", "2026-11-20", true, {{"purpose", "practice"}});
    CHECK_THAT(refused_to_renew(yard, 1, {"P-1"}), says("was welded for practice"));
    yard.coupon("B-1", "2026-11-20", true, {{"mechanical", "failed"}, {"position", "1G"}});
    CHECK_THAT(refused_to_renew(yard, 1, {"B-1"}), says("its mechanical tests failed"));
    yard.coupon("F-1", "2026-11-20", false, {{"position", "2G"}});
    CHECK_THAT(refused_to_renew(yard, 1, {"F-1"}), says("was graded failed"));
    yard.coupon("D-1", "2026-11-26", true, {{"position", "5G"}});
    CHECK_THAT(refused_to_renew(yard, 1, {"D-1"}), says("which is to come"));
    yard.coupon("L-1", "2026-11-20", true, {{"welder", "L2"}});
    CHECK_THAT(refused_to_renew(yard, 1, {"L-1"}), says("was not welded by L1"));
    yard.coupon("S-1", "2026-11-20", true, {{"process", "SMAW"}, {"filler-group", "F4"}});
    CHECK_THAT(refused_to_renew(yard, 1, {"S-1"}), says("was welded with 'SMAW', not with GTAW"));
    CHECK_THAT(refused_to_renew(yard, 1, {"P-1", "B-1", "P-1"}), says("coupon P-1 is given twice"));

    yard.coupon("E-1", "2026-11-20", true,
                {{"form", "plate"}, {"seam", ""}, {"diameter", ""}, {"position", "3G"}}, {Exam::VT});
    CHECK_THAT(refused_to_renew(yard, 1, {"E-1"}), says("no RT or mechanical tests"));
    const auto done = renewed(yard, 1, {"E-1"}, "the film is with the customer");
    CHECK(done.value.now.validity.state == Validity::State::valid);
    const WelderEvent kept = yard.book.welder("L1").events.back();
    CHECK(kept.override_why == "the film is with the customer");
    REQUIRE(kept.overridden.size() == 3);
    CHECK(kept.overridden.at(0).kind == Shortcoming::Kind::verdict);
    CHECK(kept.overridden.at(1).kind == Shortcoming::Kind::exam);
    CHECK(kept.overridden.at(1).rule == "inside");
    // Others failed since it lapsed, in other positions: as many as of a retest.
    CHECK(kept.overridden.at(2).kind == Shortcoming::Kind::coupons);
    CHECK(kept.overridden.at(2).asked == 2);
    const auto said = words_of(kept.overridden, shipped_range_rules("asme-ix").get());
    CHECK_THAT(said.at(0), says("the verdict for class test coupon is 'cannot say'"));
    CHECK_THAT(said.at(1), says("no RT or mechanical tests"));
}

TEST_CASE("any process of the coupon renews its own", "[standing]") {
    Yard yard;
    const Yard::Fields both{{"process", "GTAW 0.05in + SMAW 0.1in"}, {"filler-group", "F6 + F4"}};
    yard.coupon("Q-1", "2025-06-10", true, both);
    yard.qualify("Q-1");
    yard.coupon("Q-2", "2026-11-20", true, both);
    CHECK(renewed(yard, 2, {"Q-2"}).value.now.validity.state == Validity::State::valid);
    CHECK(yard.validity(1).state == Validity::State::lapsed);
    CHECK(renewed(yard, 1, {"Q-2"}).value.now.validity.state == Validity::State::valid);
}

TEST_CASE("as many coupons renew as the rules ask", "[standing]") {
    Yard yard;
    two_coupon_rules(yard);
    yard.coupon("Q-2", "2026-11-10", true, {{"position", "1G"}});
    yard.coupon("Q-3", "2026-11-20", true, {{"position", "2G"}});
    CHECK_THAT(refused_to_renew(yard, 1, {"Q-2"}), says("2 coupons renew it, 1 is given [8, house]"));
    const auto done = renewed(yard, 1, {"Q-3", "Q-2"});
    CHECK(done.value.event.day == parse_day("2026-11-20"));
    CHECK(done.value.event.evidence.size() == 2);
    CHECK_THAT(done.value.event.text, says("coupons Q-3 and Q-2"));
}

TEST_CASE("after a coupon that failed, a renewal takes the two that the retest rules ask", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2025-06-10");
    yard.qualify("Q-1");
    yard.coupon("R-1", "2026-10-05", false);
    yard.coupon("R-2", "2026-10-06");
    CHECK_THAT(refused_to_renew(yard, 1, {"R-2"}), says("2 coupons must pass, 1 did"));
    yard.coupon("R-3", "2026-10-07");
    renewed(yard, 1, {"R-2", "R-3"});
}

TEST_CASE("what failed and is not of the kind that renews is named where it asks for more", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2025-06-10");
    yard.qualify("Q-1");
    yard.coupon("R-1", "2026-10-05", false, {{"joint", "fillet"}});
    yard.coupon("R-2", "2026-10-06");
    CHECK_THAT(refused_to_renew(yard, 1, {"R-2"}),
               says("coupon R-1 failed on 2026-10-05: 2 coupons renew it, 1 is given"));
}
