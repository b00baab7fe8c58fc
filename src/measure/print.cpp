#include "measure/print.hpp"

#include "measure/unit.hpp"

#include <array>
#include <cstdio>
#include <optional>

namespace beadbook {
namespace {

/// How many base units make one printed unit, and what it is called.
struct Scale {
    Exact base;
    std::string name;
    int digits;
};

/// The units that reports print in, by the family of units of the reader.
struct Printed {
    std::string_view inch, metric;
    int inch_digits, metric_digits;
};
constexpr std::array<Printed, 16> printed{{
    {"", "", 3, 3},
    {"in", "mm", 4, 3},
    {"in2", "mm2", 6, 3},
    {"deg", "deg", 2, 2},
    {"F", "F", 1, 1},
    {"min", "min", 3, 3},
    {"A", "A", 1, 1},
    {"A/in", "A/mm", 2, 2},
    {"fc", "fc", 2, 2},
    {"uW/cm2", "uW/cm2", 1, 1},
    {"lb", "kg", 3, 3},
    {"G", "G", 3, 3},
    {"mL", "mL", 3, 3},
    {"Ci", "Ci", 3, 3},
    {"R/h", "R/h", 4, 4},
    {"uSv/h", "uSv/h", 3, 3},
}};

Scale scale_of(Dimension d, Unit u) {
    const Printed &p = printed[static_cast<std::size_t>(d)];
    const std::string_view word = u == Unit::inch ? p.inch : p.metric;
    const int digits = u == Unit::inch ? p.inch_digits : p.metric_digits;
    if (word.empty()) return {1, "", digits};
    return {unit_called(word).scale, " " + std::string(word), digits};
}

std::string digits_of(Int128 value) {
    std::string out;
    do {
        out.insert(out.begin(), static_cast<char>('0' + static_cast<int>(value % 10)));
        value /= 10;
    } while (value != 0);
    return out;
}

std::string decimal_of(Int128 whole, int places) {
    const bool negative = whole < 0;
    if (negative) whole = -whole;
    std::string text = digits_of(whole);
    const auto wide = static_cast<std::size_t>(places);
    if (text.size() <= wide) text.insert(0, wide + 1 - text.size(), '0');
    if (places > 0) {
        text.insert(text.size() - wide, ".");
        while (text.back() == '0') text.pop_back();
        if (text.back() == '.') text.pop_back();
    }
    return (negative ? "-" : "") + text;
}

Exact shifted(Exact value, int places) {
    for (int i = 0; i < places; ++i) value = value * Exact(10);
    return value;
}

std::string decimal(const Exact &value, int places) {
    return decimal_of(shifted(value, places).rounded(), places);
}

/// So many places, of those that a reader may be given, as make it exact; nothing: none do.
std::optional<int> exact_places(const Exact &value, int least) {
    for (int places = least; places <= 6; ++places)
        if (shifted(value, places).is_whole()) return places;
    return std::nullopt;
}
Exact magnitude(const Exact &v) { return v < Exact(0) ? v * Exact(-1) : v; }

} // namespace

std::string_view name_of(Unit u) { return u == Unit::inch ? "in" : "mm"; }

std::string print(const Exact &value, Dimension dimension, Unit unit) {
    const Scale scale = scale_of(dimension, unit);
    return decimal(value / scale.base, scale.digits) + scale.name;
}

std::string print_exact(const Exact &value, Dimension dimension, Unit unit) {
    const Scale scale = scale_of(dimension, unit);
    const Exact scaled = value / scale.base;
    return decimal(scaled, exact_places(scaled, scale.digits).value_or(scale.digits)) + scale.name;
}

std::string print_limit(const Exact &value, Dimension dimension, Unit unit, bool at_most) {
    const Scale scale = scale_of(dimension, unit);
    const Exact scaled = value / scale.base;
    if (exact_places(scaled, scale.digits)) return print_exact(value, dimension, unit);
    const Exact exact = shifted(scaled, scale.digits);
    Int128 whole = exact.rounded();
    if (at_most && Exact::whole(whole) > exact) --whole;
    if (!at_most && Exact::whole(whole) < exact) ++whole;
    return decimal_of(whole, scale.digits) + scale.name;
}

std::string print_unrounded(const Exact &value, Dimension dimension, Unit unit) {
    const Unit other = unit == Unit::inch ? Unit::millimetre : Unit::inch;
    for (const Unit in : {unit, other})
        if (const Scale scale = scale_of(dimension, in); exact_places(value / scale.base, scale.digits))
            return print_exact(value, dimension, in);
    return print_exact(value, dimension, unit);
}

std::string print_figures(const Exact &value, Dimension dimension, Unit unit) {
    const Scale scale = scale_of(dimension, unit);
    char text[48];
    std::snprintf(text, sizeof text, "%.6g", value.to_double() / scale.base.to_double());
    return text + scale.name;
}

PrintedPair print_pair(const Exact &first, const Exact &second, Dimension dimension, Unit unit) {
    const Scale scale = scale_of(dimension, unit);
    const auto rounded = [&](const Exact &value, int places) {
        return shifted(value / scale.base, places).rounded();
    };
    int places = scale.digits;
    while (places < 12 && first != second && rounded(first, places) == rounded(second, places)) ++places;
    // Of the printed numbers, so that who subtracts them finds it.
    Exact apart = magnitude(Exact::whole(rounded(first, places) - rounded(second, places)));
    for (int i = 0; i < places; ++i) apart = apart / Exact(10);
    return {decimal(first / scale.base, places) + scale.name,
            decimal(second / scale.base, places) + scale.name, decimal(apart, places) + scale.name};
}

} // namespace beadbook
