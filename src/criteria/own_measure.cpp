#include "criteria/own_measure.hpp"

namespace beadbook {

OwnMeasure own_measure(const Vocabulary &vocabulary, TypeId type) {
    if (vocabulary[type].measured) return OwnMeasure::dimension;
    for (std::optional<TypeId> t = type; t; t = vocabulary[*t].under)
        if (vocabulary[*t].by) return *vocabulary[*t].by;
    return OwnMeasure::several;
}

} // namespace beadbook
