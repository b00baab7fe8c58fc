// Finds that nobody said the place of may lie end to end; what is called by its shape alone may be one with
// another where it touches.
#include "case.hpp"
#include "catch.hpp"
#include "judge/end_to_end.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// UFGS-15216N 3.5.4 b (read): at a wall of 12 mm elongated indications by film up to 6.35 mm (1/4 in).
JudgedCase film(std::vector<std::string> log, const std::string &more = "weld-length=200mm") {
    return judged("ufgs-15216n",
                  {"joint=groove material=steel thickness=12mm weld-thickness=12mm inside=accessible " + more,
                   std::move(log)});
}
std::string before_end_to_end(const JudgedCase &c) { return verdicts_before(first_to_ask_where, c); }

constexpr const char *accepted = "pressure piping accept", *open = "pressure piping cannot say",
                     *rejected = "pressure piping reject";

} // namespace

TEST_CASE("finds without a place may be one, as long as all of them, to the nanometre") {
    const auto two = film({"RT oxide inclusion l 4 mm", "RT oxide inclusion l 2.350001 mm"});
    CHECK(two.verdicts() == open);
    CHECK(before_end_to_end(two) == accepted);
    CHECK(film({"RT oxide inclusion l 4 mm", "RT oxide inclusion l 2.35 mm"}).verdicts() == accepted);
    CHECK(film({"RT oxide inclusion l 6.350001 mm"}).verdicts() == rejected);
    // Three, each two of which would do.
    CHECK(film({"RT slag l 2.2 mm", "RT oxide inclusion l 2.2 mm", "RT slag l 2.2 mm"}).verdicts() == open);
    // Another kind, another side.
    CHECK(film({"RT slag l 4 mm", "RT elongated cavity l 4 mm"}).verdicts() == accepted);
    CHECK(film({"RT slag l 4 mm, root", "RT slag l 4 mm, face"}).verdicts() == accepted);
    CHECK(film({"RT slag l 4 mm, root", "RT slag l 4 mm"}).verdicts() == open);
}

TEST_CASE("one without a place may fill the gaps between those that have one") {
    // 2 + 3 mm with 1 mm between: 5 and 1.5 mm together are 6.5.
    CHECK(film({"RT slag l 2 mm at 10 mm", "RT slag l 3 mm at 13 mm", "RT slag l 1.5 mm"}).verdicts() ==
          open);
    // Two that lie 2 mm apart are out of its reach together; 3 and 1.5 mm are 4.5.
    CHECK(film({"RT slag l 2 mm at 10 mm", "RT slag l 3 mm at 14 mm", "RT slag l 1.5 mm"}).verdicts() ==
          accepted);
    CHECK(film({"RT slag l 2 mm at 10 mm", "RT slag l 3 mm at 14 mm", "RT slag l 2 mm"}).verdicts() == open);
    // Over the datum of a closed weld.
    const std::string girth = "form=tube seam=girth diameter=60mm";
    const std::vector<std::string> over{"RT slag l 3 mm at 0 mm", "RT slag l 2 mm at 185.5 mm",
                                        "RT slag l 1.5 mm"};
    CHECK(film(over, girth).verdicts() == open);
    CHECK(film(over).verdicts() == accepted);
}

TEST_CASE("round finds without a place were seen one by one") {
    const auto pores = film({"RT gas pore s 3 mm", "RT gas pore s 1.1 mm"});
    const BoundSet bound(*pores.set, pores.coupon, Vocabulary::shipped(), engine_number);
    CHECK(end_to_end(bound, pores.indications).empty());
    const auto slag = film({"RT slag l 3 mm", "RT slag l 1.1 mm"});
    CHECK(end_to_end(BoundSet(*slag.set, slag.coupon, Vocabulary::shipped(), engine_number), slag.indications)
              .size() == 1);
}

TEST_CASE("what is called by its shape alone may be one where it touches, whatever the shape") {
    // 3.5.2 (read): by penetrant, a length of more than three times the width is linear, and none is allowed.
    const auto touching = film(
        {"PT rounded indication l 1.5 mm w 1 mm at 10 mm", "PT linear indication l 2 mm w 1 mm at 11.5 mm"});
    CHECK(before_end_to_end(touching) == accepted);
    CHECK(touching.verdicts() == open);
    CHECK(film({"PT rounded indication l 1.5 mm w 1 mm at 10 mm",
                "PT linear indication l 2 mm w 1 mm at 11.500001 mm"})
              .verdicts() == accepted);
}
