#include "operations/limit_relation.hpp"

#include "criteria/limit_order.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

bool same_formula(const Formula &a, const Formula &b) {
    return std::equal(a.nodes().begin(), a.nodes().end(), b.nodes().begin(), b.nodes().end(),
                      [](const Formula::Node &x, const Formula::Node &y) {
                          return x.op == y.op && x.quantity == y.quantity && x.left == y.left &&
                                 x.right == y.right && x.constant == y.constant && x.table == y.table;
                      });
}

/// What the coupon's facts tell of the quantities that matter here.
std::vector<Inequality> as_known(const Alternatives &where, const LimitOfRule &a, const LimitOfRule &b,
                                 const Coupon &coupon, Unit unit) {
    std::set<Slot> slots;
    const auto take = [&](const std::vector<Inequality> &all) {
        for (const auto &one : all)
            for (const auto &[slot, factor] : one.sum.factors) slots.insert(slot);
    };
    for (const auto &all : where) take(all);
    for (const Formula *formula : {&a.formula, &b.formula})
        if (const auto pieces = pieces_of(*formula, unit))
            for (const auto &piece : *pieces) {
                take(piece.where);
                for (const auto &[slot, factor] : piece.value.factors) slots.insert(slot);
            }
    std::vector<Inequality> out;
    for (const Slot slot : slots) {
        const auto q = static_cast<Quantity>(slot);
        if (slot >= coupon_quantities || !coupon.values.has(q)) continue;
        const Linear off = Linear::of(slot) - Linear{{}, Exact(coupon.values[q])};
        out.push_back(at_least_zero(off));
        out.push_back(at_least_zero(off.times(Exact(-1))));
    }
    return out;
}

bool lets_more_at_a_tie(Compare a, Compare b) {
    return (a == Compare::at_most && b == Compare::under) || (a == Compare::at_least && b == Compare::over);
}

bool counts(const Rule &rule) { return rule.kind == Rule::Kind::count || rule.kind == Rule::Kind::combine; }

/// Where only some of what is compared is known to differ, or all may be alike after all.
LimitRelation at_most_so(LimitRelation relation) {
    switch (relation) {
    case LimitRelation::stricter: return LimitRelation::never_looser;
    case LimitRelation::looser: return LimitRelation::never_stricter;
    case LimitRelation::either: return LimitRelation::unknown;
    default: return relation;
    }
}

LimitRelation of_numbers(const Exact &a, Compare at_a, const Exact &b, Compare at_b) {
    if (a == b)
        return lets_more_at_a_tie(at_a, at_b)   ? LimitRelation::looser
               : lets_more_at_a_tie(at_b, at_a) ? LimitRelation::stricter
                                                : LimitRelation::equal;
    return (a < b) == is_maximum(at_a) ? LimitRelation::stricter : LimitRelation::looser;
}

/// What is counted is whole: under 4 is at most 3. Where both shrink with a short weld the two part again.
LimitRelation of_counts(const LimitOfRule &first, const Exact &a, const LimitOfRule &second, const Exact &b) {
    const Compare at_a = first.rule.compare, at_b = second.rule.compare;
    if (first.rule.prorated) return at_most_so(of_numbers(a, at_a, b, at_b));
    return of_numbers(most_counted(a, at_a), Compare::at_most, most_counted(b, at_b), Compare::at_most);
}

/// Over all values that the conditions of the two rules leave.
LimitRelation of_formulas(const LimitOfRule &first, const LimitOfRule &second, const Coupon &coupon,
                          Unit unit) {
    const Compare at_a = first.rule.compare, at_b = second.rule.compare;
    std::vector<Condition> conditions;
    for (const Rule *rule : {&first.rule, &second.rule})
        for (const auto *list : {&rule->when, &rule->where})
            conditions.insert(conditions.end(), list->begin(), list->end());
    Alternatives where = where_hold(conditions, unit);
    where = both_of(where, {as_known(where, first, second, coupon, unit)});
    const auto over = [&](const LimitOfRule &x, const LimitOfRule &y, bool strictly) {
        return is_maximum(at_a) ? may_be_over(where, x.formula, y.formula, unit, strictly)
                                : may_be_over(where, y.formula, x.formula, unit, strictly);
    };
    const auto first_more = over(first, second, !lets_more_at_a_tie(at_a, at_b));
    const auto second_more = over(second, first, !lets_more_at_a_tie(at_b, at_a));
    if (!first_more || !second_more) return LimitRelation::unknown;
    if (*first_more && *second_more) return LimitRelation::either;
    if (!*first_more && !*second_more) return LimitRelation::equal;
    const bool looser = *first_more;
    const auto ever_equal = looser ? over(second, first, lets_more_at_a_tie(at_a, at_b))
                                   : over(first, second, lets_more_at_a_tie(at_b, at_a));
    if (!ever_equal || *ever_equal)
        return looser ? LimitRelation::never_stricter : LimitRelation::never_looser;
    return looser ? LimitRelation::looser : LimitRelation::stricter;
}

} // namespace

Exact most_counted(const Exact &limit, Compare compare) {
    const Exact whole = Exact::whole(limit.num() / Int128(limit.den()));
    return std::max(Exact(0), compare == Compare::under && limit.is_whole() ? whole - Exact(1) : whole);
}

LimitRelation limit_relation(const LimitOfRule &first, const LimitOfRule &second, const Coupon &coupon,
                             Unit unit) {
    const Compare at_a = first.rule.compare, at_b = second.rule.compare;
    const Environment env{coupon.values, nullptr};
    const Evaluated a = first.formula.limit(env, at_a), b = second.formula.limit(env, at_b);
    if (a.known() && b.known())
        return counts(first.rule) ? of_counts(first, a.value, second, b.value)
                                  : of_numbers(a.value, at_a, b.value, at_b);
    if (at_a == at_b && same_formula(first.formula, second.formula)) return LimitRelation::equal;

    const LimitRelation relation = of_formulas(first, second, coupon, unit);
    return counts(first.rule) ? at_most_so(relation) : relation;
}

} // namespace beadbook
