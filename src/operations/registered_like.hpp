#pragma once

#include "operations/office.hpp"

namespace beadbook {

/// Adds to the notes of a change which coupons were registered like one that was changed, or like one of
/// these, and say still what it said before. `changed` are as they were described before, with their marks.
void note_registered_like(Office &office, const std::vector<CouponRecord> &changed,
                          std::vector<std::string> &notes);

/// What a coupon says as that one said it that it was registered like, and says otherwise since, as it
/// follows "It was"; empty: nothing, or nobody registered it like another.
std::string said_before_correction(Office &office, const CouponRecord &coupon);
/// The same as a note.
void note_said_before_correction(Office &office, const CouponRecord &coupon, std::vector<std::string> &notes);

} // namespace beadbook
