#pragma once

#include "operations/office.hpp"

namespace beadbook {

/// A coupon that is graded passed, as it failed by other criteria or another class than those it passed by:
/// by any that it was ever registered for and that reject it as it stands, or as it stood when it was graded
/// failed by them. Nothing if none did.
std::optional<CouponState> failed_by_others(Office &office, const std::vector<Entry> &history,
                                            const CouponState &coupon);

} // namespace beadbook
