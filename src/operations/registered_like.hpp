#pragma once

#include "operations/office.hpp"

namespace beadbook {

/// Adds to the notes of a change which coupons were registered like the changed one, or like one of these,
/// and say still what it said before. `old` is as it was described before, with its mark.
void note_registered_like(Office &office, const CouponRecord &old, std::vector<std::string> &notes);

/// What a coupon says as that one said it that it was registered like, and says otherwise since, in a
/// sentence; empty: nothing, or nobody registered it like another.
std::string said_before_correction(Office &office, const CouponRecord &coupon);
/// The same as a note.
void note_said_before_correction(Office &office, const CouponRecord &coupon, std::vector<std::string> &notes);

} // namespace beadbook
