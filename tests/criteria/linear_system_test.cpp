#include "catch.hpp"
#include "criteria/linear_system.hpp"

using namespace beadbook;

namespace {

Linear sum(std::int64_t x, std::int64_t y, std::int64_t constant) {
    Linear out{{}, Exact(constant)};
    if (x != 0) out.factors[1] = Exact(x);
    if (y != 0) out.factors[2] = Exact(y);
    return out;
}

} // namespace

TEST_CASE("inequalities hold together, or not, exactly at the edge") {
    // x at least 5 and x at most 5; one of them strict.
    CHECK(can_hold({at_least_zero(sum(1, 0, -5)), at_least_zero(sum(-1, 0, 5))}) == true);
    CHECK(can_hold({over_zero(sum(1, 0, -5)), at_least_zero(sum(-1, 0, 5))}) == false);
    // x over y, y over x + 1.
    CHECK(can_hold({over_zero(sum(1, -1, 0)), over_zero(sum(-1, 1, -1))}) == false);
    CHECK(can_hold({over_zero(sum(1, -1, 0)), over_zero(sum(-1, 1, 1))}) == true);
    // A triangle with one point, and without it.
    CHECK(can_hold({at_least_zero(sum(1, 0, 0)), at_least_zero(sum(0, 1, 0)),
                    at_least_zero(sum(-1, -1, 0))}) == true);
    CHECK(can_hold({at_least_zero(sum(1, 0, 0)), over_zero(sum(0, 1, 0)), at_least_zero(sum(-1, -1, 0))}) ==
          false);
    CHECK(can_hold({}) == true);
    CHECK(can_hold({over_zero(sum(0, 0, 0))}) == false);
}

TEST_CASE("sums of quantities are added and cancelled") {
    const Linear none = sum(3, 0, 4) - sum(3, 0, 4);
    CHECK(none.is_constant());
    CHECK(none.constant == Exact(0));
    CHECK(sum(2, 4, 6).times(Exact::fraction(1, 2)) == sum(1, 2, 3));
}
