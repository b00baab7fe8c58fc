#pragma once

#include "measure/exact.hpp"

#include <cstdint>
#include <optional>
#include <string_view>

namespace beadbook {

/// What kind of thing a number measures. Each is kept in one base unit, named beside it; numbers of different
/// kinds are never compared. A percentage is a number: 40 % is 2/5.
enum class Dimension : std::uint8_t {
    number,
    length,             ///< nm
    area,               ///< nm2
    angle,              ///< 1e-6 degree
    temperature,        ///< 1e-6 degree Fahrenheit
    time,               ///< s
    current,            ///< A
    current_per_length, ///< A per nm
    light,              ///< lx (visible)
    irradiance,         ///< uW/cm2 (UV-A)
    weight,             ///< g
    field,              ///< A/m
    concentration,      ///< mL in 100 mL
    activity,           ///< Ci
    radiation,          ///< R/h, of exposure; rates in Sv/h are a kind of their own
    dose_rate,          ///< uSv/h
};

/// "a length", "an angle".
std::string_view name_of(Dimension d);
/// Values as people write them: "105 deg".
std::string_view example_of(Dimension d);
/// The largest that is taken from people; small enough that sums of a million of them stay exact.
Exact largest(Dimension d);
/// What the record keeps as a whole number of base units: lengths, areas, angles, temperatures.
constexpr bool kept_whole(Dimension d) { return d >= Dimension::length && d <= Dimension::temperature; }

/// What a product measures; nothing if it means nothing here (a length times an angle).
std::optional<Dimension> product_of(Dimension a, Dimension b);
/// What `a` divided by `b` measures.
std::optional<Dimension> quotient_of(Dimension a, Dimension b);

} // namespace beadbook
