#pragma once

#include "operations/owners_copy.hpp"

namespace beadbook {

/// Refuses a copy (field "edition") that is not one of the standard that the set is by: another standard or
/// another year may hold other numbers, and what names neither is none that can be found again.
void check_edition(const CriteriaSet &set, const std::string &copy);

/// A sentence where a number that stands in the set was read in a copy of another year; one is enough.
std::vector<std::string> other_editions(const OwnersCopyState &entered, const CriteriaSet &set,
                                        const std::string &copy);

} // namespace beadbook
