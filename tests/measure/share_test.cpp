#include "catch.hpp"
#include "measure/share.hpp"

#include <cmath>

using namespace beadbook;

TEST_CASE("exact intervals of a share are as published") {
    // Clopper-Pearson, 95 %: statsmodels, stats/tests/results/results_proportion.py at commit 82c59e37, read.
    struct Row {
        std::size_t count, of;
        double low, high;
    };
    for (const Row &row : {Row{18, 20, 0.6830172859809176, 0.9876514728297052},
                           {4, 20, 0.05733399705, 0.436614002997},
                           {190, 200, 0.90997246230, 0.97576583453}}) {
        const Share share = share_of(row.count, row.of);
        INFO(row.count << " of " << row.of);
        CHECK(share.low == Approx(row.low).epsilon(0).margin(2e-11));
        CHECK(share.high == Approx(row.high).epsilon(0).margin(2e-11));
        CHECK(share.value() == static_cast<double>(row.count) / static_cast<double>(row.of));
    }
}

TEST_CASE("at none and at all the interval ends at 0 and 1, and its other end is a root") {
    // Of none in n the chance is (1 - p)^n, which is 2.5 % at the upper end.
    for (const std::size_t n : {1u, 2u, 30u, 1000u}) {
        const double root = std::pow(0.025, 1.0 / static_cast<double>(n));
        CHECK(share_of(0, n).low == 0);
        CHECK(share_of(0, n).high == Approx(1 - root).epsilon(1e-9));
        CHECK(share_of(n, n).low == Approx(root).epsilon(1e-9));
        CHECK(share_of(n, n).high == 1);
    }
    CHECK(share_of(0, 0).low == 0);
    CHECK(share_of(0, 0).high == 1);
    CHECK(share_of(0, 0).value() == 0);
}

TEST_CASE("an interval holds its share, grows narrower with more, and mirrors") {
    for (std::size_t of = 1; of <= 60; ++of)
        for (std::size_t count = 0; count <= of; ++count) {
            const Share share = share_of(count, of), other = share_of(of - count, of),
                        twice = share_of(2 * count, 2 * of);
            CHECK(share.low <= share.value());
            CHECK(share.value() <= share.high);
            CHECK(share.low == Approx(1 - other.high).margin(1e-12));
            CHECK(twice.high - twice.low < share.high - share.low);
        }
}
