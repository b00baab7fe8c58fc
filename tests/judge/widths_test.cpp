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
std::string before(const JudgedCase &c) {
    JudgedCase out = c;
    out.judgement =
        judge(*c.set, c.coupon, c.exams, c.indications, Vocabulary::shipped(), first_to_doubt_widths - 1);
    return out.verdicts();
}

constexpr const char *accepted = "pressure piping accept", *open = "pressure piping cannot say";

} // namespace

TEST_CASE("round pieces that touch are linear as one where the narrowest makes them so") {
    const auto narrow = piping({"PT gas pore s 3 mm at 10 mm", "PT gas pore s 1.19 mm at 13 mm"});
    CHECK(narrow.verdicts() == open);
    CHECK(before(narrow) == accepted);
    CHECK(piping({"PT gas pore s 1.19 mm at 11.81 mm", "PT gas pore s 3 mm at 13 mm"}).verdicts() == open);
    // 3 mm and 1.5 mm: three times the narrowest is still rounded.
    CHECK(piping({"PT gas pore s 3 mm at 10 mm", "PT gas pore s 1.5 mm at 13 mm"}).verdicts() == accepted);
    CHECK(piping({"PT gas pore s 3 mm at 10 mm", "PT gas pore s 1.19 mm at 13.01 mm"}).verdicts() ==
          accepted);
}

TEST_CASE("a round name does not say how wide what is only so long is") {
    const auto long_alone = piping({"PT gas pore l 3 mm at 10 mm"});
    CHECK(long_alone.verdicts() == open);
    CHECK(before(long_alone) == accepted);
    CHECK(piping({"PT gas pore from 10 mm to 13 mm"}).verdicts() == open);
    CHECK(piping({"PT gas pore l 3 mm s 3 mm at 10 mm"}).verdicts() == open); // the size tells no width
    CHECK(piping({"PT gas pore s 3 mm at 10 mm"}).verdicts() == accepted);
    CHECK(piping({"PT gas pore l 3 mm w 1 mm at 10 mm"}).verdicts() == accepted);
}

TEST_CASE("no area is larger than length and width, or size, can hold") {
    const auto larger = piping({"PT gas pore l 3 mm w 1 mm area 3.01 mm2 at 10 mm"});
    CHECK(larger.verdicts() == open);
    CHECK(before(larger) == accepted);
    CHECK(piping({"PT gas pore l 3 mm w 1 mm area 3 mm2 at 10 mm"}).verdicts() == accepted);
    CHECK(piping({"PT gas pore s 3 mm area 9.01 mm2 at 10 mm"}).verdicts() == open);
    CHECK(piping({"PT gas pore s 3 mm area 9 mm2 at 10 mm"}).verdicts() == accepted);
    // The area of a group is that of all its pores.
    CHECK(piping({"PT uniformly distributed porosity s 1 mm area 3 mm2 at 10 mm"}).verdicts() ==
          piping({"PT uniformly distributed porosity s 1 mm at 10 mm"}).verdicts());
}

TEST_CASE("pieces of one family that touch may be one, whatever each was called") {
    // 3.5.4 (read): an elongated slag inclusion to 1/4 in; these are 0.2 in each, and 0.4 in as one.
    const std::string slag = "RT slag inclusion l 0.2 in w 0.02 in at 1 in",
                      tungsten = "RT tungsten inclusion l 0.2 in w 0.02 in at 1.2 in",
                      apart = "RT tungsten inclusion l 0.2 in w 0.02 in at 1.3 in";
    CHECK(piping({slag, tungsten}).verdicts() == open);
    CHECK(before(piping({slag, tungsten})) == accepted);
    CHECK(piping({slag, apart}).verdicts() == accepted);
}
