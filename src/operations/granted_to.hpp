#pragma once

#include "operations/standing.hpp"

namespace beadbook {

/// Why a qualification may be another's: it was granted to who was called quite otherwise, and nobody said
/// that this is the same person; or for work with another employer where its rules ask for the same, or this
/// one was left since. Empty: nothing speaks for that.
std::string granted_to_another(Book &book, const WelderState &welder, const HeldQualification &held);

/// What a welder keeps who never left the employer, though he was said to be with another one between.
inline constexpr const char *never_left = "never-left";
/// Whether he was with this employer before, and then with another one.
bool came_back(Book &book, const WelderRecord &welder);

/// Where a way holds with the same employer, that he is on record: nobody could say later whether he is the
/// same. Throws Refusal.
void check_employer_told(const WelderRecord &welder, const std::string &way, const RangeRules &rules);

/// What speaks against a test of this record as this welder's: that he is called quite otherwise since it
/// came on record, and nobody said that this is the same person; or works for another one, where the way
/// holds with the same employer.
std::vector<Shortcoming> otherwise_since(Book &book, const WelderRecord &welder, const std::string &coupon,
                                         const std::string &way, const RangeRules &rules);

} // namespace beadbook
