#pragma once

#include "technique/arithmetic.hpp"
#include "technique/calculation.hpp"

#include <cstdio>
#include <numbers>

/// What the tables of calculations are written with: inputs as they are asked for, as typed quantities, and
/// results as they are read.
namespace beadbook::technique::words {

using K = Dimension;
using In = CalculationInputs;
using Results = std::vector<CalculationResult>;
namespace si = boost::units::si;

inline CalculationInput needs(std::string name, K kind, std::string help) {
    return {std::move(name), {kind}, std::move(help), "", false, {}};
}
inline CalculationInput with(std::string name, K kind, std::string help, std::string otherwise) {
    return {std::move(name), {kind}, std::move(help), std::move(otherwise), false, {}};
}
inline CalculationInput may(std::string name, K kind, std::string help) {
    return {std::move(name), {kind}, std::move(help), "", true, {}};
}
inline CalculationInput one_of(std::string name, std::vector<std::string> words, std::string help) {
    return {std::move(name), {}, std::move(help), "", false, std::move(words)};
}
/// Radiation in whichever unit people measure; results keep it.
inline CalculationInput level(std::string name, std::string help) {
    return {std::move(name), {K::radiation, K::dose_rate}, std::move(help), "", false, {}};
}

inline std::string digits(double value, const char *format = "%.4g") {
    char text[64];
    std::snprintf(text, sizeof text, format, value);
    return text;
}

// What was typed, as typed quantities.
inline Metres length(const In &in, const std::string &name) { return in.number(name) * 1e-9 * si::metre; }
inline Amperes current(const In &in, const std::string &name) { return in.number(name) * si::ampere; }
inline AmperesPerMetre per_length(const In &in, const std::string &name) {
    return in.number(name) * 1e9 * si::ampere / si::metre;
}
inline Seconds time(const In &in, const std::string &name) { return in.number(name) * si::second; }
inline Radians angle(const In &in, const std::string &name) {
    return in.number(name) * 1e-6 * std::numbers::pi / 180.0 * si::radian;
}

/// As typed, without the noise of floating point: for comparing with a limit.
inline Exact exact_inches(const In &in, const std::string &name) {
    return in.amounts.at(name).value / Exact(nm_per_inch);
}

inline double inches(Metres m) { return m.value() / 0.0254; }
inline std::string say(Metres m, Unit unit) {
    return unit == Unit::inch ? digits(inches(m)) + " in" : digits(m.value() * 1000.0) + " mm";
}
inline std::string say(Amperes a) { return digits(a.value(), "%.0f") + " A"; }
inline std::string say_turns(Amperes a) { return digits(a.value(), "%.0f") + " ampere-turns"; }
inline std::string say(Seconds s) {
    return s.value() < 120.0    ? digits(s.value()) + " s"
           : s.value() < 7200.0 ? digits(s.value() / 60.0) + " min"
                                : digits(s.value() / 3600.0) + " h";
}

/// A level in the unit that the input has: "18.75 R/h".
inline std::string level_like(const In &in, const std::string &name, double value) {
    const std::string &typed = in.word(name);
    std::size_t at = 0;
    scan_number(typed, at);
    const auto unit = scan_unit(typed, at);
    return digits(value / unit->scale.to_double()) + " " + std::string(unit->word);
}

} // namespace beadbook::technique::words
