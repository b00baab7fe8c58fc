#include "criteria/own_measure.hpp"

namespace beadbook {

OwnMeasure own_measure(const Vocabulary &vocabulary, TypeId type) {
    if (vocabulary[type].measured) return OwnMeasure::dimension;
    for (std::optional<TypeId> t = type; t; t = vocabulary[*t].under)
        if (vocabulary[*t].by) return *vocabulary[*t].by;
    return OwnMeasure::several;
}

Quantity measured_alone(const Vocabulary &vocabulary, TypeId type) {
    switch (own_measure(vocabulary, type)) {
    case OwnMeasure::depth: return Quantity::depth;
    case OwnMeasure::height: return Quantity::height;
    default: return Quantity::size;
    }
}

} // namespace beadbook
