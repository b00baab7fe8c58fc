#include "measure/photo_scale.hpp"

#include "measure/refusal.hpp"

#include <algorithm>
#include <cmath>

namespace beadbook {
namespace {

constexpr std::int64_t farthest = 10'000'000; ///< from the corner: 100,000 pixels

void check(const PicturePoint &point) {
    if (std::max(std::abs(point.x), std::abs(point.y)) > farthest)
        throw refused("a mark lies farther than 100,000 pixels from the corner of the picture").at("marks");
}

/// Its square, exactly.
Exact squared_distance(const PicturePoint &a, const PicturePoint &b) {
    const std::int64_t x = a.x - b.x, y = a.y - b.y;
    return Exact(x * x + y * y);
}

/// Decimal places of the unit to which both numbers are rounded up: the second figure of the uncertainty.
int places_for(double uncertainty, Unit unit) {
    const int finest = unit == Unit::inch ? 3 : 2;
    return std::clamp(1 - static_cast<int>(std::floor(std::log10(uncertainty))), 0, finest);
}

Exact step_of(int places, Unit unit) {
    std::int64_t nm = unit == Unit::inch ? nm_per_inch : nm_per_mm;
    for (int i = 0; i < places; ++i) nm /= 10;
    return Exact(nm);
}

/// "0.064 in" of 64 steps with 3 places.
Typed typed(std::int64_t steps, int places, const Exact &step, Unit unit) {
    std::string digits = std::to_string(steps);
    if (const auto least = static_cast<std::size_t>(places) + 1; digits.size() < least)
        digits.insert(0, least - digits.size(), '0');
    if (places > 0) digits.insert(digits.size() - static_cast<std::size_t>(places), ".");
    return {digits + (unit == Unit::inch ? " in" : " mm"), Exact(steps) * step};
}

} // namespace

PhotoSize size_on_photo(const PhotoMarks &marks, Exact known, Unit unit) {
    for (const auto &point : {marks.known_from, marks.known_to, marks.find_from, marks.find_to}) check(point);
    if (known <= Exact(0) || known > Exact(longest_length.nm))
        throw refused("the known length is to be more than nothing, and no more than a weld has").at("known");
    if (marks.off <= 0 || marks.off > farthest)
        throw refused("each mark is off by something; say by how many pixels it may be").at("off");
    const Exact d2 = squared_distance(marks.known_from, marks.known_to),
                f2 = squared_distance(marks.find_from, marks.find_to);
    // Farther out the ratio is no straight line any more, and the formula would say too little.
    const auto p = static_cast<double>(marks.off);
    constexpr double least_known = 8;
    if (d2.to_double() < least_known * least_known * p * p)
        throw refused(
            "on the picture the known length is less than eight times as long as a mark may be off; "
            "mark a longer one")
            .at("marks");
    if (f2 == Exact(0)) throw refused("both marks of the find lie on one another").at("marks");
    const double size = known.to_double() * std::sqrt(f2.to_double() / d2.to_double());
    if (size > static_cast<double>(longest_length.nm))
        throw refused("so the find would be longer than any weld of a coupon; look at the marks").at("marks");
    const double uncertainty = size * std::sqrt(2 * p * p / d2.to_double() + 2 * p * p / f2.to_double());
    const double nm = unit == Unit::inch ? double{nm_per_inch} : double{nm_per_mm};
    const int places = places_for(uncertainty / nm, unit);
    const Exact step = step_of(places, unit);
    // Floating numbers only tell where to look: that it is no less is settled exactly, by the squares.
    const Exact target = known * known * f2;
    auto steps = std::max<std::int64_t>(1, std::llround(size / step.to_double()) - 2);
    while (Exact(steps) * step * Exact(steps) * step * d2 < target) ++steps;
    // A little more than it may come out too low by.
    const auto of_uncertainty =
        static_cast<std::int64_t>(std::ceil(uncertainty * (1 + 1e-12) / step.to_double()));
    return {typed(steps, places, step, unit), typed(of_uncertainty, places, step, unit)};
}

} // namespace beadbook
