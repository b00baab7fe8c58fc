#pragma once

#include "operations/judging.hpp"

namespace beadbook {

/// The class by which one coupon is told, in lists as on its page: the one sought. Without one a coupon that
/// makes any is accepted, so the first that it makes; of those that nobody can say, or that all refuse, the
/// one with the fewest reasons, of equal ones the last.
std::size_t told_class(const Judged &judged);

} // namespace beadbook
