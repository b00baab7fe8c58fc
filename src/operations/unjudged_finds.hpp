#pragma once

#include "operations/failed_by.hpp"

#include <string>
#include <vector>

namespace beadbook {

/// What a coupon shows, by its types, where nobody can say whether it failed by that: it cannot be judged by
/// what it names, as of no criteria, nobody graded it, and it was not accepted by others since. Empty
/// otherwise. `now` is how it is judged.
std::vector<std::string> unjudged_finds(const CouponState &coupon, const std::optional<JudgedNow> &now);

} // namespace beadbook
