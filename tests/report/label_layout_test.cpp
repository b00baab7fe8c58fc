#include "report/label_layout.hpp"

#include "catch.hpp"

#include <algorithm>
#include <cmath>
#include <random>

using namespace beadbook;

namespace {

/// Pairs that are nearer than the gap in one row, and labels outside.
int faults(const std::vector<LabelWish> &wishes, const std::vector<LabelSpot> &spots, double from, double to,
           double gap) {
    int out = 0;
    for (std::size_t i = 0; i < wishes.size(); ++i) {
        out += spots[i].left < from - 0.001 || spots[i].left + wishes[i].width > to + 0.001;
        for (std::size_t j = i + 1; j < wishes.size(); ++j)
            out += spots[i].row == spots[j].row &&
                   spots[i].left < spots[j].left + wishes[j].width + gap - 0.001 &&
                   spots[j].left < spots[i].left + wishes[i].width + gap - 0.001;
    }
    return out;
}

} // namespace

TEST_CASE("a lone label stands over what it is for, and at an edge within it") {
    const auto spots = spread_labels({{50, 20}}, 0, 100);
    CHECK(spots[0].left == Approx(40));
    CHECK(spots[0].row == 0);
    CHECK(spread_labels({{1, 20}}, 0, 100)[0].left == Approx(0));
    CHECK(spread_labels({{99, 20}}, 0, 100)[0].left == Approx(80));
    CHECK(spread_labels({}, 0, 100).empty());
}

TEST_CASE("two that would touch share the way aside, in their order") {
    const auto spots = spread_labels({{52, 20}, {50, 20}}, 0, 100, 4);
    CHECK(spots[1].left == Approx(29)); // the one of 50; together they are 44 wide, their middle at 51
    CHECK(spots[0].left == Approx(53));
}

TEST_CASE("labels of 1 to 200 finds never overlap, stay within, and near where the row has room") {
    std::mt19937 random(7);
    for (const std::size_t count : {1u, 2u, 5u, 20u, 60u, 200u})
        for (int round = 0; round < 20; ++round) {
            const double to = round % 2 == 0 ? 326 : 766;
            std::uniform_real_distribution<double> at(14, to);
            // Every third round all lie in one place.
            const double spread = round % 3 == 0 ? 0.02 : 1;
            std::vector<LabelWish> wishes;
            for (std::size_t i = 0; i < count; ++i)
                wishes.push_back({14 + (at(random) - 14) * spread, 17.0 + 8.0 * static_cast<double>(i % 3)});
            const auto spots = spread_labels(wishes, 14, to, 4);
            INFO(count << " labels, round " << round);
            CHECK(faults(wishes, spots, 14, to, 4) == 0);
            double farthest = 0;
            for (std::size_t i = 0; i < count; ++i)
                farthest = std::max(farthest, std::abs(spots[i].left + wishes[i].width / 2 - wishes[i].at));
            CHECK(farthest < 52); // 34 aside, and half a label at an edge
        }
}
