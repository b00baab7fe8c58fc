#include "report/summary_charts.hpp"

#include "catch.hpp"
#include "report/pictures.hpp"

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

TEST_CASE("the line of shares runs through no number where there is room beside it, and under all words") {
    std::vector<CountedCoupon> coupons(1);
    coupons[0].verdict = Verdict::reject;
    for (int k = 0; k < 9; ++k) coupons[0].finds.push_back({"undercut", WeldPart::at_12, false});
    for (const char *type : {"crack", "gas pore", "overlap"})
        coupons[0].finds.push_back({type, WeldPart::at_3, true});
    const auto chart = imperfection_chart(summary_of(coupons), "");
    REQUIRE(chart);
    const auto &shapes = chart->picture.shapes;
    const auto way = std::find_if(shapes.begin(), shapes.end(), [](const PictureShape &shape) {
        const auto *path = std::get_if<PicturePath>(&shape);
        return path && path->role == Role::share;
    });
    REQUIRE(way != shapes.end());
    const auto &points = std::get<PicturePath>(*way).points;
    std::size_t numbers = 0;
    for (auto shape = shapes.begin(); shape != shapes.end(); ++shape) {
        const auto *words = std::get_if<PictureText>(&*shape);
        if (!words || words->text.find("so far") == std::string::npos || words->text == "so far") continue;
        ++numbers;
        CHECK(shape > way);
        const TextBounds at = bounds_of(*words);
        for (std::size_t k = 1; k < points.size(); ++k) {
            const auto [x0, y0] = points[k - 1];
            const auto [x1, y1] = points[k];
            for (int step = 0; step <= 100; ++step) {
                const double x = x0 + (x1 - x0) * step / 100, y = y0 + (y1 - y0) * step / 100;
                const bool met = x > at.left && x < at.right && y > at.top && y < at.bottom;
                if (met) FAIL("the line runs through " << words->text);
            }
        }
    }
    CHECK(numbers == 4);
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
    CHECK_THAT(chart->picture.told, says("L1: 7 of 9, 77.8 %") && says("L2: none to count."));
    CHECK(crowded(chart->picture) == "");
    CHECK(crowded(*chart->narrow) == "");
    CHECK_FALSE(share_chart("Yield", {{"L2", share_of(0, 0)}}));
}
