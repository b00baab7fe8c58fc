// How wide a find is decides whether it is linear: what nobody told stays open, and the narrowest piece
// counts.
#include "case.hpp"
#include "catch.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// UFGS-15216N 3.5.2 (read): no linear indication by penetrant, longer than three times its width.
JudgedCase piping(std::vector<std::string> log) {
    return judged(
        "ufgs-15216n",
        {"joint=groove material=steel thickness=12mm weld-thickness=12mm inside=accessible weld-length=200mm",
         std::move(log)});
}
std::string before_widths(const JudgedCase &c) { return verdicts_before(first_to_doubt_widths, c); }

constexpr const char *piping_accepted = "pressure piping accept", *piping_open = "pressure piping cannot say";

} // namespace

TEST_CASE("round pieces that touch are linear as one where the narrowest makes them so") {
    const auto narrow = piping({"PT gas pore s 3 mm at 10 mm", "PT gas pore s 1.19 mm at 13 mm"});
    CHECK(narrow.verdicts() == piping_open);
    CHECK(before_widths(narrow) == piping_accepted);
    CHECK(piping({"PT gas pore s 1.19 mm at 11.81 mm", "PT gas pore s 3 mm at 13 mm"}).verdicts() ==
          piping_open);
    // 3 mm and 1.5 mm: three times the narrowest is still rounded.
    CHECK(piping({"PT gas pore s 3 mm at 10 mm", "PT gas pore s 1.5 mm at 13 mm"}).verdicts() ==
          piping_accepted);
    CHECK(piping({"PT gas pore s 3 mm at 10 mm", "PT gas pore s 1.19 mm at 13.01 mm"}).verdicts() ==
          piping_accepted);
}

TEST_CASE("a round name does not say how wide what is only so long is") {
    const auto long_alone = piping({"PT gas pore l 3 mm at 10 mm"});
    CHECK(long_alone.verdicts() == piping_open);
    CHECK(before_widths(long_alone) == piping_accepted);
    CHECK(piping({"PT gas pore from 10 mm to 13 mm"}).verdicts() == piping_open);
    CHECK(piping({"PT gas pore l 3 mm s 3 mm at 10 mm"}).verdicts() ==
          piping_open); // the size tells no width
    CHECK(piping({"PT gas pore s 3 mm at 10 mm"}).verdicts() == piping_accepted);
    CHECK(piping({"PT gas pore l 3 mm w 1 mm at 10 mm"}).verdicts() == piping_accepted);
}

TEST_CASE("no area is larger than length and width, or size, can hold") {
    const auto larger = piping({"PT gas pore l 3 mm w 1 mm area 3.01 mm2 at 10 mm"});
    CHECK(larger.verdicts() == piping_open);
    CHECK(before_widths(larger) == piping_accepted);
    CHECK(piping({"PT gas pore l 3 mm w 1 mm area 3 mm2 at 10 mm"}).verdicts() == piping_accepted);
    CHECK(piping({"PT gas pore s 3 mm area 9.01 mm2 at 10 mm"}).verdicts() == piping_open);
    CHECK(piping({"PT gas pore s 3 mm area 9 mm2 at 10 mm"}).verdicts() == piping_accepted);
    // The area of a group is that of all its pores.
    CHECK(piping({"PT uniformly distributed porosity s 1 mm area 3 mm2 at 10 mm"}).verdicts() ==
          piping({"PT uniformly distributed porosity s 1 mm at 10 mm"}).verdicts());
}

TEST_CASE("pieces of one family that touch may be one, whatever each was called") {
    // 3.5.4 (read): an elongated slag inclusion to 1/4 in; these are 0.2 in each, and 0.4 in as one.
    const std::string slag = "RT slag inclusion l 0.2 in w 0.02 in at 1 in",
                      tungsten = "RT tungsten inclusion l 0.2 in w 0.02 in at 1.2 in",
                      apart = "RT tungsten inclusion l 0.2 in w 0.02 in at 1.3 in";
    CHECK(piping({slag, tungsten}).verdicts() == piping_open);
    CHECK(before_widths(piping({slag, tungsten})) == piping_accepted);
    CHECK(piping({slag, apart}).verdicts() == piping_accepted);
}
