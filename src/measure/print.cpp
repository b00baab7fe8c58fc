#include "measure/print.hpp"

#include <cstdlib>

namespace beadbook {
namespace {

/// How many base units make one printed unit, and what it is called.
struct Scale {
    Exact base;
    std::string name;
    int digits;
};

Scale scale_of(Dimension d, Unit u) {
    const bool inch = u == Unit::inch;
    const Exact length = inch ? nm_per_inch : nm_per_mm;
    switch (d) {
    case Dimension::length: return {length, inch ? " in" : " mm", inch ? 4 : 3};
    case Dimension::area: return {length * length, inch ? " in2" : " mm2", inch ? 6 : 3};
    case Dimension::angle: return {1'000'000, " deg", 2};
    case Dimension::temperature: return {1'000'000, " F", 1};
    case Dimension::number: break;
    }
    return {1, "", 3};
}

std::string digits_of(Int128 value) {
    std::string out;
    do {
        out.insert(out.begin(), static_cast<char>('0' + static_cast<int>(value % 10)));
        value /= 10;
    } while (value != 0);
    return out;
}

std::string decimal(const Exact &value, int places) {
    Exact scaled = value;
    for (int i = 0; i < places; ++i) scaled = scaled * Exact(10);
    Int128 whole = scaled.rounded();
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

Exact magnitude(const Exact &v) { return v < Exact(0) ? v * Exact(-1) : v; }

} // namespace

std::string_view name_of(Dimension d) {
    switch (d) {
    case Dimension::length: return "a length";
    case Dimension::area: return "an area";
    case Dimension::angle: return "an angle";
    case Dimension::temperature: return "a temperature";
    case Dimension::number: break;
    }
    return "a number";
}

std::string_view name_of(Unit u) { return u == Unit::inch ? "in" : "mm"; }

std::string print(const Exact &value, Dimension dimension, Unit unit) {
    const Scale scale = scale_of(dimension, unit);
    return decimal(value / scale.base, scale.digits) + scale.name;
}

std::string print_exact(const Exact &value, Dimension dimension, Unit unit) {
    const Scale scale = scale_of(dimension, unit);
    const Exact scaled = value / scale.base;
    for (int places = scale.digits; places <= 6; ++places) {
        Exact shifted = scaled;
        for (int i = 0; i < places; ++i) shifted = shifted * Exact(10);
        if (shifted.is_whole()) return decimal(scaled, places) + scale.name;
    }
    return print(value, dimension, unit);
}

PrintedPair print_pair(const Exact &first, const Exact &second, Dimension dimension, Unit unit) {
    const Scale scale = scale_of(dimension, unit);
    const Exact a = first / scale.base;
    const Exact b = second / scale.base;
    const Exact apart = magnitude(a - b);
    int places = scale.digits;
    while (places < 12 && first != second &&
           (decimal(a, places) == decimal(b, places) || decimal(apart, places) == "0"))
        ++places;
    return {decimal(a, places) + scale.name, decimal(b, places) + scale.name,
            decimal(apart, places) + scale.name};
}

} // namespace beadbook
