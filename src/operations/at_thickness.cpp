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

std::vector<Coupon> ways_to_be(const Coupon &coupon, const std::vector<Condition> &conditions) {
    constexpr std::size_t most = 64; // beyond that the rest is left open
    std::vector<Coupon> out{coupon};
    for (const auto &c : conditions) {
        if (c.kind != Condition::Kind::word || c.slot >= fact_count) continue;
        const auto fact = static_cast<Fact>(c.slot);
        std::vector<Coupon> next;
        for (const auto &one : out) {
            if (one.said(c.slot) != 0) {
                next.push_back(one); // told, or supposed by another condition
                continue;
            }
            for (std::size_t word = 1; word <= info(fact).words.size(); ++word)
                if ((c.fitting >> word & 1u) != 0) {
                    next.push_back(one);
                    next.back().facts[c.slot] = static_cast<std::uint8_t>(word);
                }
        }
        if (!next.empty() && next.size() <= most) out = std::move(next);
    }
    return out;
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
