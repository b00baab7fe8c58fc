// What a coupon that was taken back means for its welder.
#include "catch.hpp"
#include "operations/standing.hpp"
#include "operations/yard.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

void withdraw(Yard &yard, const std::string &coupon) {
    yard.write([&](Writing &w) { return withdraw_coupon(w, coupon, "the wrong piece"); });
}

} // namespace

TEST_CASE("a withdrawn coupon qualifies nobody", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-11-10");
    withdraw(yard, "Q-1");
    CHECK_THAT(yard.refusal([&] { yard.qualify("Q-1"); }), says("coupon Q-1 is withdrawn: the wrong piece"));
    yard.write([](Writing &w) { return restore_coupon(w, "Q-1", "the right one"); });
    yard.qualify("Q-1");
    CHECK(yard.validity(1).state == Validity::State::valid);
}

TEST_CASE("what rests on a coupon that is withdrawn later is in doubt until it comes back", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-11-10");
    yard.qualify("Q-1");
    withdraw(yard, "Q-1");
    CHECK(yard.validity(1).state == Validity::State::in_doubt);
    CHECK_THAT(yard.validity(1).reason, says("the coupon is withdrawn: the wrong piece"));
    yard.write([](Writing &w) { return restore_coupon(w, "Q-1", "the right one"); });
    CHECK(yard.validity(1).state == Validity::State::valid);
}

TEST_CASE("a failed test that is withdrawn is no less a failure", "[standing]") {
    Yard yard;
    yard.coupon("F-1", "2026-11-01", false);
    yard.coupon("Q-1", "2026-11-10");
    REQUIRE_THAT(yard.refusal([&] { yard.qualify("Q-1"); }), says("coupons must pass"));
    withdraw(yard, "F-1");
    CHECK_THAT(yard.refusal([&] { yard.qualify("Q-1"); }), says("coupons must pass"));
}

TEST_CASE("a passed test that is withdrawn completes no retest", "[standing]") {
    Yard yard;
    yard.coupon("F-1", "2026-11-01", false);
    yard.coupon("Q-1", "2026-11-10");
    yard.coupon("Q-2", "2026-11-11");
    withdraw(yard, "Q-1");
    CHECK_THAT(yard.refusal([&] { yard.qualify("Q-2"); }), says("coupons must pass"));
    yard.write([](Writing &w) { return restore_coupon(w, "Q-1", "the right one"); });
    yard.qualify("Q-2");
    CHECK(yard.validity(1).state == Validity::State::valid);
}
