#include "measure/photo_scale.hpp"

#include "catch.hpp"
#include "measure/parse.hpp"
#include "measure/refusal.hpp"

#include <cmath>
#include <random>

using namespace beadbook;

namespace {

PicturePoint at(std::int64_t x, std::int64_t y) { return {x * 100, y * 100}; }

/// A known length of so many pixels along one edge, and a find of so many along the other.
PhotoMarks marks(std::int64_t known, std::int64_t find, std::int64_t off = 3) {
    return {at(10, 10), at(10 + known, 10), at(50, 50), at(50, 50 + find), off * 100};
}

const Exact inch(nm_per_inch), mm(nm_per_mm);

} // namespace

TEST_CASE("a size on a photo is the known length times the ratio, with what the marks may be off") {
    // u = 0.1 in * sqrt(18 / 1000^2 + 18 / 100^2) = 0.00426 in: thousandths.
    const PhotoSize size = size_on_photo(marks(1000, 100), inch, Unit::inch);
    CHECK(size.size.text == "0.100 in");
    CHECK(size.size.value == Exact(nm_per_inch / 10));
    CHECK(size.uncertainty.text == "0.005 in");
    // u = 10 mm * sqrt(18 / 500^2 + 18 / 50^2) = 0.8528 mm: hundredths.
    const PhotoSize metric = size_on_photo(marks(500, 50), Exact(100) * mm, Unit::millimetre);
    CHECK(metric.size.text == "10.00 mm");
    CHECK(metric.uncertainty.text == "0.86 mm");
    // What is just 0.12 in or 0.8 mm is taken up by a step: floating numbers could have come out too low.
    CHECK(size_on_photo(marks(100, 100), Exact(2) * inch, Unit::inch).uncertainty.text == "0.13 in");
    CHECK(size_on_photo(marks(1000, 1000, 1), Exact(400) * mm, Unit::millimetre).uncertainty.text ==
          "0.81 mm");
}

TEST_CASE("a find that lies slanting is measured by its own length, in any order of its marks") {
    PhotoMarks slanting{at(0, 0), at(0, 500), at(30, 40), at(0, 0), 300}; // 3, 4, 5
    CHECK(size_on_photo(slanting, Exact(10) * mm, Unit::millimetre).size.text == "1.00 mm");
    std::swap(slanting.find_from, slanting.find_to);
    std::swap(slanting.known_from, slanting.known_to);
    CHECK(size_on_photo(slanting, Exact(10) * mm, Unit::millimetre).size.text == "1.00 mm");
}

TEST_CASE("a known length in one unit gives a size in the coupon's") {
    const PhotoSize size = size_on_photo(marks(1000, 1000), Exact(10) * mm, Unit::inch);
    CHECK(size.size.text == "0.394 in"); // 0.3937
}

TEST_CASE("what is measured on a photo is never rounded to what is less, and by one step at most to more") {
    std::mt19937_64 random(7);
    const auto number = [&](std::int64_t from, std::int64_t to) {
        return std::uniform_int_distribution<std::int64_t>(from, to)(random);
    };
    for (int i = 0; i < 20'000; ++i) {
        PhotoMarks m;
        for (auto *point : {&m.known_from, &m.known_to, &m.find_from, &m.find_to})
            *point = {number(0, 400'000), number(0, 400'000)};
        m.off = number(1, 900);
        const Exact known(number(1, 300) * (number(0, 1) ? nm_per_mm : nm_per_inch / 16));
        const Unit unit = number(0, 1) ? Unit::inch : Unit::millimetre;
        const auto distance = [](const PicturePoint &a, const PicturePoint &b) {
            return std::hypot(static_cast<long double>(a.x - b.x), static_cast<long double>(a.y - b.y));
        };
        const long double d = distance(m.known_from, m.known_to), f = distance(m.find_from, m.find_to);
        if (f == 0 || d < 8.0L * static_cast<long double>(m.off)) continue;
        const PhotoSize got = size_on_photo(m, known, unit);
        const long double size = static_cast<long double>(known.to_double()) * f / d,
                          p = static_cast<long double>(m.off),
                          uncertainty = size * std::sqrt(2 * p * p / (d * d) + 2 * p * p / (f * f));
        const long double fine = 1e-9L * size;
        const auto told = static_cast<long double>(got.size.value.to_double()),
                   told_off = static_cast<long double>(got.uncertainty.value.to_double());
        INFO(got.size.text << " +- " << got.uncertainty.text);
        CHECK(told >= size - fine);
        CHECK(told_off >= uncertainty - fine);
        // A step is a tenth of the uncertainty's first figure, or the finest that anybody reads.
        const long double finest = unit == Unit::inch ? 25'400 : 10'000;
        const long double step = std::max(finest, uncertainty / 10 + fine);
        CHECK(told <= size + step + fine);
        CHECK(told_off <= uncertainty + step + fine);
        CHECK(parse_typed(got.size.text, Dimension::length, {}).value == got.size.value);
    }
}

TEST_CASE("marks that measure nothing are refused, with what would mend it") {
    const auto fault = [](const PhotoMarks &m, Exact known = inch) -> std::string {
        try {
            size_on_photo(m, known, Unit::inch);
        } catch (const Refusal &e) {
            return e.field() + ": " + e.what();
        }
        return "";
    };
    CHECK_THAT(fault(marks(0, 100)), says("marks: on the picture the known length is less than eight times"));
    CHECK_THAT(fault(marks(23, 100)), says("mark a longer one"));
    CHECK(fault(marks(24, 100)).empty());
    CHECK_THAT(fault(marks(100, 0)), says("marks: both marks of the find lie on one another"));
    CHECK_THAT(fault(marks(100, 10), Exact(0)), says("known: "));
    CHECK_THAT(fault(marks(100, 10), Exact(-5)), says("known: "));
    CHECK_THAT(fault(marks(100, 10, 0)), says("off: "));
    CHECK_THAT(fault(marks(100, 10, -3)), says("off: "));
    CHECK_THAT(fault(marks(24, 90'000), Exact(399'000) * mm), says("longer than any weld"));
    CHECK_THAT(fault(marks(200'000, 10)), says("marks: a mark lies farther"));
}
