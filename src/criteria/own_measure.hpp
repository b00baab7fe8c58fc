#pragma once

#include "criteria/vocabulary.hpp"

namespace beadbook {

/// What of an imperfection makes it the worse, the more of it there is: what a limit of its type goes by.
enum class OwnMeasure : std::uint8_t {
    extent,    ///< how large it is, in any direction
    depth,     ///< how deep it goes into the wall
    height,    ///< how far it stands out, or apart
    angle,     ///< of a toe, or between members
    opening,   ///< how wide it stands open
    dimension, ///< its size: no imperfection, but what is checked
    several,   ///< more than one of these
};
OwnMeasure own_measure(const Vocabulary &vocabulary, TypeId type);

} // namespace beadbook
