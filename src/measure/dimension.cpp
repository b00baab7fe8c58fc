#include "measure/dimension.hpp"

#include "measure/quantity.hpp"

#include <array>

namespace beadbook {
namespace {

struct DimensionInfo {
    std::string_view name, example;
};

constexpr std::array<DimensionInfo, 16> table{{
    {"a number", "12 or 40 %"},
    {"a length", "0.045 in, 3/16 in, 1-1/2 in or 1.2 mm"},
    {"an area", "0.004 in2 or 2.5 mm2"},
    {"an angle", "105 deg"},
    {"a temperature", "350 F or 180 C"},
    {"a time", "10 min or 30 s"},
    {"a current", "500 A"},
    {"a current per length", "100 A/in"},
    {"an amount of light", "100 fc or 1000 lx"},
    {"an irradiance", "1000 uW/cm2"},
    {"a weight", "10 lb or 4.5 kg"},
    {"a field strength", "3 G or 2.4 kA/m"},
    {"a concentration", "0.2 mL"},
    {"an activity", "50 Ci or 1850 GBq"},
    {"an exposure rate", "2 mR/h"},
    {"a dose rate", "20 uSv/h"},
}};

/// Whole a times whole b is whole product, in base units.
struct Product {
    Dimension a, b, product;
};
constexpr std::array<Product, 2> products{{
    {Dimension::length, Dimension::length, Dimension::area},
    {Dimension::current_per_length, Dimension::length, Dimension::current},
}};

const DimensionInfo &info(Dimension d) { return table[static_cast<std::size_t>(d)]; }

} // namespace

std::string_view name_of(Dimension d) { return info(d).name; }
std::string_view example_of(Dimension d) { return info(d).example; }

Exact largest(Dimension d) {
    switch (d) {
    case Dimension::length: return longest_length.nm;
    case Dimension::area: return Exact(9'000'000) * nm_per_mm * nm_per_mm; // nine square metres
    case Dimension::angle: return 360'000'000;
    case Dimension::temperature: return 10'000'000'000;
    case Dimension::number: return 1'000'000'000;
    default: return 1'000'000'000'000;
    }
}

std::optional<Dimension> product_of(Dimension a, Dimension b) {
    if (a == Dimension::number) return b;
    if (b == Dimension::number) return a;
    for (const auto &p : products)
        if ((a == p.a && b == p.b) || (a == p.b && b == p.a)) return p.product;
    return std::nullopt;
}

std::optional<Dimension> quotient_of(Dimension a, Dimension b) {
    if (b == Dimension::number) return a;
    if (a == b) return Dimension::number;
    for (const auto &p : products) {
        if (a == p.product && b == p.b) return p.a;
        if (a == p.product && b == p.a) return p.b;
    }
    return std::nullopt;
}

} // namespace beadbook
