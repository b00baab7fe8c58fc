#include "judge/coupon.hpp"

#include <algorithm>

namespace beadbook {
namespace {

Exact ellipse(const Exact &length, const Exact &width) {
    const Exact quarter_pi = Exact::fraction(785'398'163'397'448, 1'000'000'000'000'000);
    return Exact::whole((length * width * quarter_pi).rounded());
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
    if (!measures.has(Quantity::area) && measures.has(Quantity::length)) {
        const Exact length = value(Quantity::length);
        const bool only_size = !has_length && !has_width;
        if (has_width && length > Exact(3) * value(Quantity::width)) {
            area_from = AreaFrom::rectangle;
            measures.set(Quantity::area, length * value(Quantity::width));
        } else if (has_width || (only_size && vocabulary[type].shape != Shape::linear)) {
            area_from = AreaFrom::ellipse;
            measures.set(Quantity::area, ellipse(length, has_width ? value(Quantity::width) : length));
        }
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
