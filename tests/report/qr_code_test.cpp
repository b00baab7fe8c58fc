#include "report/qr_code.hpp"

#include "catch.hpp"
#include "measure/refusal.hpp"

using namespace beadbook;

namespace {

/// The three corners that tell a camera where the code lies: 7 by 7 modules, a dark frame, a light one, a
/// dark square of 3 (ISO/IEC 18004, from memory).
bool corner_at(const std::vector<std::vector<bool>> &code, std::size_t y, std::size_t x) {
    for (std::size_t i = 0; i < 7; ++i)
        for (std::size_t j = 0; j < 7; ++j) {
            const bool frame = i == 0 || i == 6 || j == 0 || j == 6;
            const bool middle = i >= 2 && i <= 4 && j >= 2 && j <= 4;
            if (code[y + i][x + j] != (frame || middle)) return false;
        }
    return true;
}

} // namespace

TEST_CASE("a mark becomes the smallest code, with its three corners") {
    const auto code = qr_code("T-7");
    REQUIRE(code.size() == 21); // version 1 is 21 modules wide, each further one 4 more
    CHECK(corner_at(code, 0, 0));
    CHECK(corner_at(code, 0, 14));
    CHECK(corner_at(code, 14, 0));
    CHECK_FALSE(corner_at(code, 14, 14));
    const auto longer = qr_code("https://bench.example/coupon/T-7");
    CHECK(longer.size() > 21);
    CHECK((longer.size() - 17) % 4 == 0);
    CHECK(corner_at(longer, 0, longer.size() - 7));
}

TEST_CASE("another text is another code, and the same text the same") {
    CHECK(qr_code("T-7") == qr_code("T-7"));
    CHECK(qr_code("T-7") != qr_code("T-8"));
}

TEST_CASE("a text that no code holds is refused") {
    CHECK_THROWS_AS(qr_code(std::string(4000, 'x')), Refusal);
}
