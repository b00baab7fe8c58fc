#pragma once

#include "facts/coupon_record.hpp"
#include "qualify/weld.hpp"

#include <vector>

namespace beadbook {

/// Whether a position is one of groove tests in which a tube stands still and the weld goes round it: no
/// plate is welded so (AWS A3.0 and ISO 6947, from memory).
bool goes_round(const std::string &position);

/// Whether a position is one of fillet tests (1F to 4F, 2FR; AWS A3.0, from memory).
bool is_of_a_fillet(const std::string &position);

/// The coupon as a welder's test: one weld for each process, because each process is qualified by what it
/// deposited itself. `GTAW 1/8in + SMAW 3/8in` is two; the other words (filler group, filler type, backing,
/// transfer, runs, layers) may be given in as many parts, else they are the same for all. But what the first
/// process welded backs the next, so that a word for none is the first one's alone; and layers in one number
/// are those of all, and not known of each. Throws DataError: a part that is no word with an optional size.
std::vector<Weld> welds_of(const CouponRecord &coupon);

} // namespace beadbook
