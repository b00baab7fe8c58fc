#pragma once

#include "criteria/vocabulary.hpp"

namespace beadbook {

/// What a limit of the type goes by: what the vocabulary says of it, or of the nearest wider type.
OwnMeasure own_measure(const Vocabulary &vocabulary, TypeId type);
/// What a number of such a find is that stands alone: its depth or height where limits go by that, else its
/// size.
Quantity measured_alone(const Vocabulary &vocabulary, TypeId type);

} // namespace beadbook
