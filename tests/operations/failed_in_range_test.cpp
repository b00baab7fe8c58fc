// Tests that failed and that a later one of another kind takes in.
#include "catch.hpp"
#include "operations/yard.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

const Yard::Fields on_plate{
    {"form", "plate"}, {"seam", "straight"}, {"diameter", ""}, {"weld-length", "6in"}, {"position", "3G"}};

Yard::Fields in_position(const std::string &position) { return {{"position", position}}; }

const auto tells = says("coupon Q-1 failed on 2026-10-05 in position 3G, which its range takes in");

} // namespace

TEST_CASE("a later test in whose range a failed one lies carries a caution until its retest is done",
          "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-10-05", false, on_plate);
    yard.coupon("Q-2", "2026-10-12");
    const auto granted = yard.qualify("Q-2").value.held;
    CHECK(granted[0].validity.with_caution);
    CHECK_THAT(granted[0].validity.reason, tells);
    yard.coupon("Q-3", "2026-10-13", true, on_plate);
    CHECK_THAT(yard.validity(1).reason, tells);
    yard.coupon("Q-4", "2026-10-14", true, on_plate);
    CHECK_FALSE(yard.validity(1).with_caution);
    CHECK(yard.validity(1).state == Validity::State::valid);
}

TEST_CASE("what does not take it in, was welded before it, or is of its own kind bears no caution",
          "[standing]") {
    Yard yard;
    yard.coupon("Q-0", "2026-10-04");
    yard.coupon("Q-1", "2026-10-05", false, on_plate);
    yard.qualify("Q-0");
    yard.coupon("Q-2", "2026-10-12", true, in_position("2G"));
    yard.qualify("Q-2");
    yard.coupon("Q-3", "2026-10-12", true, on_plate);
    yard.coupon("Q-4", "2026-10-12", true, on_plate);
    yard.qualify("Q-4");
    yard.coupon("Q-5", "2026-10-12", true, {{"process", "SMAW"}, {"filler-group", "F4"}});
    yard.qualify("Q-5");
    for (int number = 1; number <= 4; ++number) CHECK_FALSE(yard.validity(number).with_caution);
}

TEST_CASE("what is dated before a failure, entered after it and takes it in does not qualify", "[standing]") {
    const auto late = says("it is dated before the failure of coupon Q-1 and was entered only after that");
    Yard yard;
    yard.coupon("Q-1", "2026-10-05", false, on_plate);
    yard.coupon("Q-2", "2026-10-04");
    CHECK_THAT(refused_to_qualify(yard, "Q-2"), late);
    yard.coupon("Q-3", "2026-10-04", true, in_position("5G"));
    CHECK_THAT(refused_to_qualify(yard, "Q-3"), late);
    yard.coupon("Q-4", "2026-10-04", true, in_position("2G"));
    yard.qualify("Q-4");
}
