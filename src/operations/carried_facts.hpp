#pragma once

#include "operations/office.hpp"

namespace beadbook {

struct Turned;

/// What stands against the coupon here, and goes along when it leaves the record; what it came with stays.
std::vector<CarriedFact> facts_to_carry(Office &office, const CouponState &coupon);

/// Whether it was a test there; nothing if it comes from no other record, or that tells nothing.
std::optional<bool> was_test_elsewhere(const CouponRecord &coupon);

/// What it came with that a pass is asked about, as if it had been turned here.
std::vector<Turned> turned_elsewhere(const CouponRecord &coupon);

} // namespace beadbook
