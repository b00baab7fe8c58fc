#pragma once

#include "criteria/model.hpp"

#include <initializer_list>

namespace beadbook {

/// Some, and nothing but kinds of these.
bool only_of(const TypeSet &types, std::initializer_list<const char *> wider);

/// What the rule measures goes into the wall, or takes one member past the other.
bool goes_into_wall(const Rule &rule);

} // namespace beadbook
