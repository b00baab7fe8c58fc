#include "naive_coupon.hpp"

#include <algorithm>

namespace beadbook::test {
namespace {

Truth truth(const Condition &c, const Coupon &coupon) {
    Missing missing;
    if (c.kind != Condition::Kind::word) return c.compare(Environment{coupon.values}, missing);
    std::size_t fit = 0, not_fit = 0;
    for (std::size_t w = 1; w < 64; ++w)
        if ((coupon.said(c.slot) >> w) & 1u) ++((c.fitting >> w) & 1u ? fit : not_fit);
    if (fit > 0 && not_fit > 0) return Truth::unknown;
    return fit > 0 ? Truth::yes : not_fit > 0 ? Truth::no : Truth::unknown;
}

} // namespace

bool naive_covers(const CriteriaSet &set, const Coupon &coupon) {
    return std::all_of(set.scope.begin(), set.scope.end(), [&](const ScopePart &part) {
        const bool asked = std::none_of(part.only_if.begin(), part.only_if.end(),
                                        [&](const Condition &c) { return truth(c, coupon) == Truth::no; });
        return !asked || std::all_of(part.when.begin(), part.when.end(),
                                     [&](const Condition &c) { return truth(c, coupon) == Truth::yes; });
    });
}

bool naive_asks_what_weld(const CriteriaSet &set, const Coupon &coupon) {
    if (!set.scope_said || !set.scope.empty()) return false;
    return coupon.said(static_cast<Slot>(Fact::joint)) == 0 ||
           coupon.said(static_cast<Slot>(Fact::material)) == 0;
}

Evaluated naive_limit(const Rule &rule, const Formula &formula, const Coupon &coupon,
                      const Environment::Values &local) {
    Environment::Values inches = coupon.values, millimetres = coupon.values;
    inches.measure_in(Unit::inch);
    millimetres.measure_in(Unit::millimetre);
    const Evaluated a = formula.evaluate(Environment{inches, &local});
    const Evaluated b = formula.evaluate(Environment{millimetres, &local});
    if (const auto unit = coupon.values.measured_in()) return *unit == Unit::inch ? a : b;
    const bool maximum = rule.compare == Compare::at_most || rule.compare == Compare::under;
    return (maximum ? a.value < b.value : a.value > b.value) ? b : a;
}

} // namespace beadbook::test
