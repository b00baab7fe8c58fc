#include "operations/left_out.hpp"

#include "operations/graded_tests.hpp"

#include <algorithm>

namespace beadbook {

bool LeftOut::goes_along(Office &office, const std::string &coupon) const {
    if (!office.book().knows_coupon(coupon)) return false; // it failed elsewhere, and was left out there
    const auto shop = std::find_if(shops_.all().begin(), shops_.all().end(),
                                   [&](const Shops::Shop &one) { return one.office == &office; });
    const auto asked = shops_.asked_of(*shop, of_);
    bool out = false;
    walk_these(office, {coupon}, [&](CouponAtHand &one) {
        out = asked && is_meant(*asked, one) && one.coupon().record.withdrawn.empty();
        return true;
    });
    return out;
}

const std::vector<CarriedFact> &LeftOut::beside(Office &office, const CouponRecord &coupon) {
    const std::string welder = coupon.get("welder");
    const auto [known, is_new] = of_welder_.try_emplace({&office, welder});
    auto &out = known->second;
    if (!is_new || welder.empty()) return out;
    WelderState who;
    who.record.mark = welder;
    if (office.book().knows_welder(welder)) who = office.book().welder(welder);
    for (const auto &event : who.events)
        if (event.kind == "revocation") {
            const auto *held = who.qualification(event.qualification);
            revoked_.push_back(welder + " #" + std::to_string(event.qualification) +
                               (held ? " by " + held->rules : "") + " on " + print(event.day));
        }
    for (auto &fact : GradedTests(office, who).failures()) {
        if (goes_along(office, fact.coupon)) continue;
        fact.coupon = mark_elsewhere(fact.coupon);
        if (std::find(told_.begin(), told_.end(), fact.coupon) == told_.end()) told_.push_back(fact.coupon);
        out.push_back(std::move(fact));
    }
    return out;
}

} // namespace beadbook
