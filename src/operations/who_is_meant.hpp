#pragma once

#include "operations/standing.hpp"

namespace beadbook {

// What was asked about who somebody is, and was answered as meant so: a sentence each, with who answered and
// when. It belongs beside what is held by it.

/// Of the welder, whatever is held.
std::vector<std::string> who_is_meant(Book &book, const WelderRecord &welder);
/// Of those who welded the coupons of a test.
std::vector<std::string> who_welded(Book &book, const QualificationRecord &held);

} // namespace beadbook
