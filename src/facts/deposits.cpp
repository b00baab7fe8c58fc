#include "facts/deposits.hpp"

#include "facts/coupon_weld.hpp"
#include "measure/print.hpp"

namespace beadbook {
namespace {

/// What the processes of a groove weld deposited, beside what it holds.
struct Deposits {
    Exact sum;
    std::size_t untold = 0; ///< processes of which nobody said how much
    std::optional<Exact> weld;
    std::string name; ///< of what it is held against

    explicit Deposits(const CouponRecord &coupon) {
        const std::string process = coupon.get("process");
        if (coupon.get("joint") != "groove" || process.find(' ') == std::string::npos) return;
        const auto values = coupon.facts().values;
        const bool told = values.has(Quantity::weld_thickness);
        const Quantity of = told ? Quantity::weld_thickness : Quantity::thicker;
        if (!values.has(of)) return;
        try {
            for (const Weld &one : welds_of(coupon))
                if (const auto &size = one.size(Trait::weld_thickness))
                    sum = sum + *size;
                else
                    ++untold;
        } catch (const DataError &) {
            return; // told where the process is read
        }
        weld = Exact(values[of]);
        name = told ? "weld thickness" : "thicker member";
    }

    std::string words(const CouponRecord &coupon, const std::string &how) const {
        const auto length = [&](const Exact &size) { return print(size, Dimension::length, coupon.unit()); };
        return "process '" + coupon.get("process") + "' is a deposit of " + length(sum) + how + name + ", " +
               length(*weld);
    }
};

} // namespace

std::string deposits_over_weld(const CouponRecord &coupon) {
    const Deposits all(coupon);
    return all.weld && all.sum > *all.weld ? all.words(coupon, ", more than the ") : "";
}

std::string deposits_under_weld(const CouponRecord &coupon) {
    const Deposits all(coupon);
    if (!all.weld || all.untold > 0 || all.name != "weld thickness" || all.sum >= *all.weld) return "";
    return all.words(coupon, ", less than the ") + ": which process deposited the rest?";
}

} // namespace beadbook
