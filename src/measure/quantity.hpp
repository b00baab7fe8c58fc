#pragma once

#include "measure/dimension.hpp"

#include <cstdint>
#include <string>
#include <string_view>

namespace beadbook {

/// Which units people use for lengths; every report prints in the one that was typed.
enum class Unit : std::uint8_t { inch, millimetre };

std::string_view name_of(Unit u);

/// A length along, across or into a weld: a whole number of nanometres (1 in = 25 400 000, 1/64 in = 396
/// 875).
struct Length {
    std::int64_t nm = 0;

    friend constexpr auto operator<=>(const Length &, const Length &) = default;
    friend constexpr Length operator+(Length a, Length b) { return {a.nm + b.nm}; }
    friend constexpr Length operator-(Length a, Length b) { return {a.nm - b.nm}; }
};

constexpr std::int64_t nm_per_inch = 25'400'000;
constexpr std::int64_t nm_per_mm = 1'000'000;
/// Longer than any weld of a coupon, small enough that areas, and sums of a million lengths, stay exact.
constexpr Length longest_length{400'000 * nm_per_mm};

/// A measurement as a person typed it, beside its exact value.
struct Typed {
    std::string text; ///< as typed, with the unit that was meant ("3/16 in")
    Exact value;      ///< in the base unit of its dimension

    friend bool operator==(const Typed &, const Typed &) = default;
};

} // namespace beadbook
