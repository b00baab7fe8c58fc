#include "operations/taken_back.hpp"

#include "operations/turned.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Follows a find from coupon to coupon. It may have come back to one, under another number.
std::string became_of(Book &book, MovedTo to) {
    std::string way;
    for (;;) {
        const CouponState there = book.coupon(to.coupon);
        const auto on = std::find_if(there.gone.begin(), there.gone.end(),
                                     [&](const MovedAway &one) { return one.number == to.number; });
        if (on != there.gone.end()) {
            to = {on->coupon, on->to_exam, on->to_number};
            way += "; from there it was moved to #" + std::to_string(to.number) + " of coupon " + to.coupon +
                   ": " + on->why;
            continue;
        }
        if (!there.indication(to.number)) way += "; there it was withdrawn";
        if (!there.record.withdrawn.empty())
            way +=
                "; coupon " + to.coupon + " is withdrawn, and judges it no more: " + there.record.withdrawn;
        return way.empty() ? "" : way.substr(2);
    }
}

} // namespace

std::vector<TakenBack> taken_back(Office &office, const CouponRecord &coupon) {
    auto out = taken_back_in(office.book().history(coupon.id), coupon);
    for (auto &one : out)
        if (one.to) one.there = became_of(office.book(), *one.to);
    for (const auto &one : turned(office, coupon.id)) {
        if (!one.accepted || one.by_text) continue;
        TakenBack back;
        back.kind = TakenBack::Kind::description;
        for (const auto &value : one.values) {
            back.was += (back.was.empty() ? "" : ", ") + value.name + " " +
                        (value.before.empty() ? "not said" : value.before);
            back.now += (back.now.empty() ? "" : ", ") + value.name + " " +
                        (value.now.empty() ? "not said" : value.now);
        }
        back.why = one.why;
        back.stamp = one.stamp;
        out.push_back(std::move(back));
    }
    return out;
}

} // namespace beadbook
