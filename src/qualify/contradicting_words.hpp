#pragma once

#include "language/condition.hpp"
#include "qualify/trait.hpp"

#include <string_view>

namespace beadbook {

/// Whether two words, each of some rules, cannot both be true of one weld: position PA and 6G, runs sl and
/// ML. Parts with a plus sign between them are held together. A word that no row knows contradicts nothing.
bool contradict(Trait trait, std::string_view a, std::string_view b);

/// Whether two words, each of some rules, are known to mean the same: PA and 1G, sl and SL.
bool same_meaning(Trait trait, std::string_view a, std::string_view b);

/// Whether two words have a position in common: 6G and H-L045, 2G and 2G+5G, but not PF and PG, which differ
/// in progression. Unknown of a word that no row knows.
Truth same_position(std::string_view a, std::string_view b);
/// Whether a word is of a test in several positions: 2G+5G.
bool several_positions(std::string_view text);

/// The progression that a position tells by its name, up or down; empty if it tells none, or both.
std::string_view progression_of(std::string_view position);

} // namespace beadbook
