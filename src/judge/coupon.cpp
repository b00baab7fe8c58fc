#include "judge/coupon.hpp"

#include <algorithm>

namespace beadbook {
namespace {

Exact area_of(const Exact &length, const Exact &width, bool linear) {
    const Exact quarter_pi = Exact::fraction(785'398'163'397'448, 1'000'000'000'000'000);
    const Exact box = length * width;
    return linear ? box : Exact::whole((box * quarter_pi).rounded());
}

} // namespace

void Indication::complete(const Vocabulary &vocabulary) {
    const auto value = [&](Quantity q) { return Exact(measures[q]); };
    const bool has_length = measures.has(Quantity::length);
    const bool has_width = measures.has(Quantity::width);
    if (!measures.has(Quantity::size) && has_length)
        measures.set(Quantity::size, has_width ? std::max(value(Quantity::length), value(Quantity::width))
                                               : value(Quantity::length));
    if (!has_length && measures.has(Quantity::size)) measures.set(Quantity::length, value(Quantity::size));
    const bool linear = vocabulary[type].shape == Shape::linear;
    if (!measures.has(Quantity::area) && measures.has(Quantity::size)) {
        if (has_length && has_width)
            measures.set(Quantity::area, area_of(value(Quantity::length), value(Quantity::width), linear));
        else if (!linear && !has_length)
            measures.set(Quantity::area, area_of(value(Quantity::size), value(Quantity::size), false));
    }
    if (place && place->to == place->from && measures.has(Quantity::length))
        place->to = {place->from.nm + measures[Quantity::length]};
    if (place && !measures.has(Quantity::length)) {
        // Both ends were given, so the length was measured.
        if (place->to > place->from) measures.set(Quantity::length, Exact(place->to.nm - place->from.nm));
        if (place->to > place->from && !measures.has(Quantity::size))
            measures.set(Quantity::size, value(Quantity::length));
    }
}

} // namespace beadbook
