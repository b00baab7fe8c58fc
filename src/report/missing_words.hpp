#pragma once

#include "report/sentence.hpp"

namespace beadbook {

/// What a finding lacks, by the names under which it is given, and of which of its finds, where the others
/// have it: "the place on the weld of #3".
std::string missing_words(const Case &c, const Finding &f);

/// Of the gaps that tell why no rule speaks of a find, the one that names it most closely.
const Gap &nearest_gap(const Case &c, const Finding &f);

} // namespace beadbook
