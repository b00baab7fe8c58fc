#include "report/summary_charts.hpp"

#include "catch.hpp"
#include "report/pictures.hpp"
#include "report/summary_document.hpp"

#include <algorithm>

using namespace beadbook;
using namespace beadbook::test;

namespace {

Summary some() {
    CountedCoupon one, two;
    one.joint = two.joint = "groove";
    one.verdict = Verdict::reject;
    two.verdict = Verdict::accept;
    one.finds = {{"gas pore", WeldPart::at_12, true},
                 {"gas pore", WeldPart::at_3, false},
                 {"gas pore", WeldPart::at_3, false},
                 {"crack", WeldPart::unknown, true}};
    return summary_of({one, two});
}

} // namespace

TEST_CASE("the chart of imperfections tells each share and what it makes with those before") {
    const auto chart = imperfection_chart(some(), "");
    REQUIRE(chart);
    CHECK(chart->picture.told ==
          "gas pore: 3 finds, 1 rejecting, 75 % so far. crack: 1 find, 1 rejecting, 100 % so far.");
    CHECK_THAT(chart->text, says("gas pore   ######################") && says("75 % so far"));
    double widest = 0;
    std::vector<double> bars;
    for (const auto &box : shapes_of<PictureBox>(chart->picture))
        if (box.role == Role::bar && box.height > 10) bars.push_back(box.width);
    REQUIRE(bars.size() == 2);
    widest = chart->picture.width - 28;
    CHECK(bars[0] == Approx(widest * 0.75));
    CHECK(bars[1] == Approx(widest * 0.25));
    CHECK(crowded(chart->picture) == "");
    CHECK(crowded(*chart->narrow) == "");
    CHECK_FALSE(imperfection_chart(summary_of({}), ""));
}

TEST_CASE("what so far makes is marked on the line of each bar, and no line runs through the words") {
    std::vector<CountedCoupon> coupons(1);
    coupons[0].verdict = Verdict::reject;
    for (int k = 0; k < 9; ++k) coupons[0].finds.push_back({"undercut", WeldPart::at_12, false});
    for (const char *type : {"crack", "gas pore", "overlap"})
        coupons[0].finds.push_back({type, WeldPart::at_3, true});
    const auto chart = imperfection_chart(summary_of(coupons), "");
    REQUIRE(chart);
    CHECK(shapes_of<PicturePath>(chart->picture).empty());
    std::vector<double> marks;
    for (const auto &mark : shapes_of<PictureEllipse>(chart->picture))
        if (mark.role == Role::share) marks.push_back(mark.x);
    REQUIRE(marks.size() == 5); // the last one stands in the legend
    CHECK(marks[0] == Approx(14 + (chart->picture.width - 28) * 0.75));
    CHECK(marks[3] == Approx(chart->picture.width - 14));
    CHECK(crowded(chart->picture) == "");
    CHECK(crowded(*chart->narrow) == "");
}

TEST_CASE("the strip of places has a column for each quarter, of girth welds by the clock") {
    const auto chart = place_chart(some(), "A");
    REQUIRE(chart);
    CHECK(chart->caption == "A");
    const auto texts = texts_in(chart->picture);
    for (const char *text : {"12", "3", "6", "9", "1, 1 rejecting", "2, 0 rejecting", "0, 0 rejecting"})
        CHECK(std::count(texts.begin(), texts.end(), text) >= 1);
    CHECK(std::count(texts.begin(), texts.end(), "end") == 0); // no weld with ends
    CHECK_THAT(chart->picture.told, says("3:00 to 6:00: 2 finds, 0 rejecting.") && says("place not known"));
    CHECK(crowded(chart->picture) == "");
    CHECK(crowded(*chart->narrow) == "");
    CHECK_FALSE(place_chart(summary_of({}), ""));
}

TEST_CASE("a share is a point within its interval") {
    const auto chart = share_chart("Yield", {{"L1", share_of(7, 9)}, {"L2", share_of(0, 0)}});
    REQUIRE(chart);
    const auto points = shapes_of<PictureEllipse>(chart->picture);
    REQUIRE(points.size() == 1); // of none there is no point
    const auto lines = shapes_of<PictureLine>(chart->picture);
    const auto interval = std::find_if(lines.begin(), lines.end(),
                                       [](const PictureLine &l) { return l.role == Role::interval; });
    REQUIRE(interval != lines.end());
    CHECK(interval->x1 < points[0].x);
    CHECK(points[0].x < interval->x2);
    CHECK(points[0].x == Approx(14 + (chart->picture.width - 28) * 7 / 9));
    CHECK_THAT(chart->picture.told, says("L1: 7 of 9, 78 % (39 % to 98 %)") && says("L2: none to count."));
    CHECK(crowded(chart->picture) == "");
    CHECK(crowded(*chart->narrow) == "");
    CHECK_FALSE(share_chart("Yield", {{"L2", share_of(0, 0)}}));
}

TEST_CASE("a share has no more figures than what it is of") {
    CHECK(share_words(share_of(7, 9)) == "7 of 9, 78 % (39 % to 98 %)");
    CHECK(share_words(share_of(0, 1)) == "0 of 1, 0 % (0 % to 98 %)");
    CHECK(share_words(share_of(2, 2)).starts_with("2 of 2, 100 % ("));
    // Of some and not all neither none nor all.
    CHECK(share_words(share_of(499, 500)).starts_with("499 of 500, 99 % ("));
    CHECK(share_words(share_of(1, 500)).starts_with("1 of 500, 1 % ("));
    CHECK(share_words(share_of(333, 1000)).starts_with("333 of 1000, 33.3 % ("));
}
