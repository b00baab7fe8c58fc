#pragma once

#include "facts/coupon_record.hpp"
#include "facts/stamp.hpp"
#include "records/entry.hpp"

#include <vector>

namespace beadbook {

/// A find that was logged and is no more, or no more so.
struct TakenBack {
    int number = 0;
    std::string was;
    std::string now; ///< empty: withdrawn
    std::string why;
    Stamp stamp; ///< of the change
};
/// In the order in which it was done. What was moved is told elsewhere.
std::vector<TakenBack> finds_taken_back(const std::vector<Entry> &history, const CouponRecord &coupon);

} // namespace beadbook
