#pragma once

#include "judge/judgement.hpp"

namespace beadbook {

/// How sure the clauses behind a verdict are, each counted once: of an accept those that its proof rests on,
/// else those that keep it from being accepted (of a reject, those that reject).
StandingCount standings_behind(const ClassJudgement &judged, const CriteriaSet &set, std::size_t class_index);

/// "How sure: of the 6 clauses behind it 4 were read in the standard and 2 were read second hand".
std::string standing_words(const StandingCount &count);

} // namespace beadbook
