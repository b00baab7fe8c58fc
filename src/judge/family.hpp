#pragma once

#include "judge/bound_set.hpp"

namespace beadbook {

/// What finds must have in common to be pieces of one imperfection, whatever each was called: kinds of one
/// wider type, and what is called by its shape alone (a linear or rounded indication); older engines asked
/// less. Nothing of a dimension, and of what a merging clause of the set decides.
std::optional<TypeId> family_of(const BoundSet &bound, const Indication &found);

/// The family of a type, whatever clauses say.
TypeId family_of_type(const BoundSet &bound, TypeId type);

/// Rules by index that limit how long or how large each find of such a type may be, and that may apply. None
/// of round ones, which were seen one by one.
Several<std::uint16_t> rules_on_length(const BoundSet &bound, const Indication &found);

using Words = std::array<std::uint8_t, attribute_count>;
/// No word of one speaks against the other's: what nobody said may be the same.
bool agree(const Words &a, const Words &b);

} // namespace beadbook
