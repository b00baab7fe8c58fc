#pragma once

#include "operations/standing.hpp"

namespace beadbook {

/// What was asked about who a welder is, or who welded the coupons of a test, and was answered as meant so: a
/// sentence each, with who answered and when. It belongs beside what is held by it.
std::vector<std::string> who_is_meant(Book &book, const WelderState &welder, const QualificationRecord &held);

} // namespace beadbook
