// What the processes of a groove weld deposited, held against what it holds.
#include "facts/deposits.hpp"

#include "catch.hpp"

using namespace beadbook;

namespace {

CouponRecord butt(const std::string &process, const std::string &weld, const std::string &joint = "groove") {
    CouponRecord out;
    out.set("joint", joint);
    out.set("thickness", "0.5in");
    if (!weld.empty()) out.set("weld-thickness", weld);
    out.set("process", process);
    return out;
}

} // namespace

TEST_CASE("deposits are no more than the weld, one and in sum") {
    CHECK(deposits_over_weld(butt("GTAW 1/8in + SMAW 3/8in", "0.5in")).empty());
    CHECK(
        deposits_over_weld(butt("GTAW 1/8in + SMAW 0.376in", "0.5in")) ==
        "process 'GTAW 1/8in + SMAW 0.376in' is a deposit of 0.501 in, more than the weld thickness, 0.5 in");
    CHECK(deposits_over_weld(butt("GTAW 2in + SMAW", "")) ==
          "process 'GTAW 2in + SMAW' is a deposit of 2 in, more than the thicker member, 0.5 in");
    CHECK(deposits_over_weld(butt("GTAW 0.5in", "")).empty());
    CHECK(deposits_over_weld(butt("GTAW 2in", "", "fillet")).empty()); // beside its plate
    CHECK(deposits_over_weld(butt("GTAW", "0.5in")).empty());
}

TEST_CASE("deposits that leave a part of the weld to nobody are told") {
    CHECK(deposits_under_weld(butt("GTAW 1/8in + SMAW 3/8in", "0.5in")).empty());
    CHECK(deposits_under_weld(butt("GTAW 1/8in + SMAW 0.374in", "0.5in"))
              .ends_with("less than the weld thickness, 0.5 in: which process deposited the rest?"));
    CHECK(deposits_under_weld(butt("GTAW 1/8in + SMAW", "0.5in")).empty());
    CHECK(deposits_under_weld(butt("GTAW 1/8in", "")).empty()); // the weld may be partial
}
