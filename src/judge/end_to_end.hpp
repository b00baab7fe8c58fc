#pragma once

#include "judge/bound_set.hpp"
#include "judge/one_of.hpp"

#include <map>

namespace beadbook {

/// Finds by the first that each is one with: alone, or several.
using Groups = std::map<std::size_t, OneOf>;

/// Finds that may lie end to end because nobody said where they are (common practice, no source): of one
/// family and exam, each such find, and of those with a place the stretch that grows longest with them. Round
/// ones were seen one by one, and are left apart. Empty where each stands by itself.
Groups end_to_end(const BoundSet &bound, const std::vector<Indication> &indications);

} // namespace beadbook
