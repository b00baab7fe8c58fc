#include "operations/at_thickness.hpp"

#include "judge/item.hpp"

#include <algorithm>

namespace beadbook {

Coupon so_thick(Coupon coupon, std::int64_t nm, Unit unit) {
    for (const Quantity q : {Quantity::thinner, Quantity::thicker, Quantity::weld_thickness})
        coupon.values.set(q, Exact(nm));
    if (!coupon.values.measured_in()) coupon.values.measure_in(unit);
    return coupon;
}

void check_tells_no_thickness(const CouponRecord &coupon) {
    for (const char *field : {"thickness", "thickness-2", "weld-thickness"})
        if (!coupon.get(field).empty())
            throw refused(
                "every thickness is looked at, with both members as thick as the weld; leave it out")
                .at(field);
}

Truth truth_for(const std::vector<Condition> &conditions, const Coupon &coupon) {
    Missing ignored;
    return holds_for(conditions, coupon, {}, {}, ignored);
}

bool outside_scope(const CriteriaSet &set, const Coupon &coupon) {
    return std::any_of(set.scope.begin(), set.scope.end(), [&](const ScopePart &part) {
        return truth_for(part.only_if, coupon) == Truth::yes && truth_for(part.when, coupon) == Truth::no;
    });
}

std::vector<std::int64_t> usual_thicknesses(Unit unit) {
    const bool inches = unit == Unit::inch;
    std::vector<std::int64_t> out;
    for (std::int64_t i = 1; i <= (inches ? 64 : 100); ++i)
        out.push_back(i * (inches ? nm_per_inch / 64 : nm_per_mm / 4));
    return out;
}

} // namespace beadbook
