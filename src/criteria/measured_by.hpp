#pragma once

#include "criteria/model.hpp"

namespace beadbook {

/// What grows with what a rule measures: how large, how deep, how many, how near. A bit each.
using Measures = std::uint64_t;

Measures measured_by(const Rule &rule);

/// Along or over the weld, in any direction.
constexpr Measures along = Measures{1} << slot_of(Quantity::size);
constexpr Measures into = Measures{1} << slot_of(Quantity::depth) | Measures{1} << slot_of(Quantity::height);

} // namespace beadbook
