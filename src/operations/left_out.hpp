#pragma once

#include "operations/selecting.hpp"

#include <map>

namespace beadbook {

/// What an export leaves out and a welder's other coupons must not go without: tests that failed, whether
/// nobody asked for them or they are withdrawn. Each welder is looked at once.
class LeftOut {
public:
    LeftOut(const Shops &shops, const Selection &of) : shops_(shops), of_(of) {}

    /// Of the one who welded a coupon of that office.
    const std::vector<CarriedFact> &beside(Office &office, const CouponRecord &coupon);
    /// Coupons that failed and are told of in this way, in no order.
    const std::vector<std::string> &told() const { return told_; }

    /// Revocations of what welders held of whose coupons some go along: "L1 #2 by asme-ix on 2026-11-20".
    const std::vector<std::string> &revoked() const { return revoked_; }

private:
    bool goes_along(Office &office, const std::string &coupon) const;

    const Shops &shops_;
    const Selection &of_;
    std::map<std::pair<Office *, std::string>, std::vector<CarriedFact>> of_welder_;
    std::vector<std::string> told_, revoked_;
};

} // namespace beadbook
