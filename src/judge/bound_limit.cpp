#include "judge/bound_limit.hpp"

#include <limits>
#include <optional>

namespace beadbook {
namespace {

struct Multiple {
    Slot of;
    Exact factor;
};

/// `larger size`, `3 x larger size`: of something measured, with a factor that cannot leave the exact range.
std::optional<Multiple> multiple_of(const Formula &formula) {
    if (const auto lone = formula.lone_quantity()) return Multiple{*lone, 1};
    const auto &nodes = formula.nodes();
    if (nodes.size() != 3 || nodes[2].op != Formula::Op::multiply) return std::nullopt;
    const bool factor_first = nodes[0].op == Formula::Op::constant;
    const auto &factor = nodes[factor_first ? 0 : 1], &quantity = nodes[factor_first ? 1 : 0];
    if (factor.op != Formula::Op::constant || quantity.op != Formula::Op::quantity) return std::nullopt;
    constexpr std::int64_t most = std::numeric_limits<std::int64_t>::max();
    if (factor.constant > Exact(most) || factor.constant < Exact(-most)) return std::nullopt;
    return Multiple{quantity.quantity, factor.constant};
}

} // namespace

BoundLimit::BoundLimit(const Limit &limit, Compare compare, const Coupon &coupon)
    : compare_(compare), formula_(&limit.formula) {
    if (beadbook::of_coupon(limit.formula)) {
        value_ = limit.formula.limit(Environment{coupon.values}, compare);
    } else if (const auto multiple = multiple_of(limit.formula)) {
        by_ = By::multiple;
        of_ = multiple->of;
        value_.value = multiple->factor;
        if (value_.value.is_whole()) whole_factor_ = static_cast<std::int64_t>(value_.value.num());
    } else {
        by_ = By::formula;
    }
}

} // namespace beadbook
