#pragma once

#include "qualify/trait.hpp"

#include <string_view>

namespace beadbook {

/// Whether two words, each of some rules, cannot both be true of one weld: position PA and 6G, runs sl and
/// ML. Parts with a plus sign between them are held together. A word that no row knows contradicts nothing.
bool contradict(Trait trait, std::string_view a, std::string_view b);

/// The progression that a position tells by its name, up or down; empty if it tells none, or both.
std::string_view progression_of(std::string_view position);

} // namespace beadbook
