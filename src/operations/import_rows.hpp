#pragma once

#include "facts/coupon_state.hpp"

#include <map>
#include <string>
#include <utility>
#include <vector>

namespace beadbook {

/// Rows of a table that are on record already beside those that are new: a table that grew since it was
/// imported.
class RowsAgain {
public:
    /// A find that a row gives. It stands already where its exam has one that reads alike.
    void take(const CouponState &coupon, std::size_t row, const IndicationRecord &find);
    /// Throws Refusal if any stands already.
    void check() const;

private:
    using Standing = std::map<std::pair<int, std::string>, int>;
    std::map<std::string, Standing> standing_; ///< the finds of each coupon by exam and line
    std::vector<std::size_t> new_;
    std::vector<std::size_t> again_;
    std::vector<std::string> as_; ///< "row 2 as #1 of T-1"
};

} // namespace beadbook
