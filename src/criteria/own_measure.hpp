#pragma once

#include "criteria/vocabulary.hpp"

namespace beadbook {

/// What a limit of the type goes by: what the vocabulary says of it, or of the nearest wider type.
OwnMeasure own_measure(const Vocabulary &vocabulary, TypeId type);

} // namespace beadbook
