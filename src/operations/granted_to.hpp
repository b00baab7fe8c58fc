#pragma once

#include "operations/standing.hpp"

namespace beadbook {

/// Why a qualification may be another's: it was granted to who was called quite otherwise, and nobody said
/// that this is the same person; or for work with another employer where its rules ask for the same. Empty:
/// nothing speaks for that.
std::string granted_to_another(Book &book, const WelderState &welder, const HeldQualification &held);

/// Where a way holds with the same employer, that he is on record: nobody could say later whether he is the
/// same. Throws Refusal.
void check_employer_told(const WelderRecord &welder, const std::string &way, const RangeRules &rules);

} // namespace beadbook
