#pragma once

#include "measure/parse.hpp"

#include <string>

namespace beadbook {

/// What a technique condition measures. Amounts of different kinds are never compared.
enum class AmountKind : std::uint8_t {
    number,
    length,             ///< nm
    time,               ///< s
    temperature,        ///< 1e-6 degree Fahrenheit
    angle,              ///< 1e-6 degree
    current,            ///< A
    current_per_length, ///< A per nm
    light,              ///< lx (visible)
    irradiance,         ///< uW/cm2 (UV-A)
    weight,             ///< g
    field,              ///< A/m
    concentration,      ///< mL in 100 mL
    percent,
    activity,  ///< Ci
    radiation, ///< R/h, of exposure; dose rates in Sv/h are a kind of their own
    dose_rate, ///< uSv/h
};
std::string_view name_of(AmountKind kind);

struct Amount {
    AmountKind kind = AmountKind::number;
    Exact value; ///< in the base unit of the kind
};

/// `100 fc`, `1000 lx`, `15 min`, `10 lb`, `6 in`, `45 F`, `1000 uW/cm2`, `3 G`. Lengths without a unit take
/// `unit`, if one is given; other kinds need theirs, only a number has none. Throws InputError.
Amount parse_amount(std::string_view text, AmountKind wanted, std::optional<Unit> unit = {});

/// A number with its unit somewhere in a text: advances `at` past it. Nothing if no number stands there.
std::optional<Amount> scan_amount(std::string_view text, std::size_t &at);

/// In the unit that people use most: inches for lengths, fc for light.
std::string print(const Amount &amount);

} // namespace beadbook
