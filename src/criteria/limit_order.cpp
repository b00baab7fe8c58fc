#include "criteria/limit_order.hpp"

#include <algorithm>

namespace beadbook {
namespace {

bool printed_twice(const std::vector<Condition> &conditions) {
    return std::any_of(conditions.begin(), conditions.end(), [](const Condition &c) {
        return c.left.has_twins() || std::any_of(c.edges.begin(), c.edges.end(),
                                                 [](const auto &edge) { return edge.right.has_twins(); });
    });
}

/// That all quantities of one kind which either formula speaks of have one value.
std::vector<Inequality> all_alike(const Formula &a, const Formula &b) {
    std::map<Dimension, Slot> first;
    std::vector<Inequality> out;
    for (const Formula *formula : {&a, &b})
        for (const Quantity q : quantities_of(*formula)) {
            const Slot other = first.emplace(info(q).dimension, slot_of(q)).first->second;
            if (other == slot_of(q)) continue;
            const Linear gap = Linear::of(slot_of(q)) - Linear::of(other);
            out.push_back(at_least_zero(gap));
            out.push_back(at_least_zero(gap.times(Exact(-1))));
        }
    return out;
}

/// So many times as much for the next class no standard allows; with another unit written, fewer are a slip.
/// Common practice, no source; what shipped sets allow lies within.
constexpr std::int64_t most_times = 10, most_times_by_unit = 8;

/// "mm" of "2.5 mm"; empty where something else than a number stands first.
std::string unit_in(const std::string &text) {
    constexpr std::string_view digits = "0123456789./ ";
    if (text.empty() || digits.find(text.front()) == std::string_view::npos) return "";
    const std::size_t begins = text.find_first_not_of(digits);
    return begins == std::string::npos ? "" : text.substr(begins);
}

bool is_plain_size(const Limit &limit) {
    return limit.kind == Limit::Kind::value && limit.formula.is_constant() &&
           (limit.formula.dimension() == Dimension::length || limit.formula.dimension() == Dimension::area ||
            limit.formula.dimension() == Dimension::number) &&
           limit.formula.constant_value() > Exact(0);
}

/// The number beside a share, in "lesser of T/3 and 0.060 in"; 0: there is none, or several.
Exact number_beside_share(const Formula &formula) {
    const auto &nodes = formula.nodes();
    const Formula::Node &last = nodes.back();
    if (last.op != Formula::Op::least && last.op != Formula::Op::greatest) return 0;
    const Formula::Node &left = nodes[last.left], &right = nodes[last.right];
    if ((left.op == Formula::Op::constant) == (right.op == Formula::Op::constant)) return 0;
    return left.op == Formula::Op::constant ? left.constant : right.constant;
}

/// Of two that take the lesser, or the greater, of a share and a number.
bool numbers_far_apart(const Limit &one, const Limit &other) {
    if (one.kind != Limit::Kind::value || other.kind != Limit::Kind::value ||
        one.formula.nodes().back().op != other.formula.nodes().back().op)
        return false;
    const Exact a = number_beside_share(one.formula), b = number_beside_share(other.formula);
    return a > Exact(0) && b > Exact(0) && (a >= b * Exact(most_times) || b >= a * Exact(most_times));
}

/// It has a value there at all.
bool is_over_nothing(const Alternatives &where, const Formula &one, Unit unit) {
    return may_be_over(where, one, Formula::constant(Exact(0), one.dimension()), unit) == true;
}

/// Everywhere at least so many times as much.
bool is_times(const Formula &one, const Formula &other, std::int64_t times) {
    const Formula more = Formula::combine(
        Formula::Op::multiply, Formula::constant(Exact(times), Dimension::number), other, other.dimension());
    const Alternatives anywhere{{}};
    return is_over_nothing(anywhere, one, Unit::inch) && is_over_nothing(anywhere, other, Unit::inch) &&
           may_be_over(anywhere, more, one, Unit::inch) == false;
}

/// The same quantities, and one is everywhere so many times the other.
bool shares_far_apart(const Limit &one, const Limit &other) {
    if (one.kind != Limit::Kind::value || other.kind != Limit::Kind::value ||
        one.formula.dimension() != other.formula.dimension() || one.formula.is_constant() ||
        one.formula.quantities() != other.formula.quantities() || one.formula.has_blanks() ||
        other.formula.has_blanks())
        return false;
    return is_times(one.formula, other.formula, most_times) ||
           is_times(other.formula, one.formula, most_times);
}

} // namespace

std::vector<Condition> conditions_of(const CriteriaSet &set, const Rule &rule) {
    std::vector<Condition> out = rule.when;
    out.insert(out.end(), rule.where.begin(), rule.where.end());
    for (const auto &part : set.scope)
        if (part.only_if.empty()) out.insert(out.end(), part.when.begin(), part.when.end());
    return out;
}

std::vector<Unit> units_to_try(const CriteriaSet &set, const Rule &rule) {
    const bool twice =
        printed_twice(conditions_of(set, rule)) ||
        std::any_of(rule.limits.begin(), rule.limits.end(),
                    [](const Limit &l) { return l.kind == Limit::Kind::value && l.formula.has_twins(); }) ||
        std::any_of(rule.windows.begin(), rule.windows.end(),
                    [](const Window &w) { return w.length.has_twins(); });
    return twice ? std::vector{Unit::inch, Unit::millimetre} : std::vector{Unit::inch};
}

std::optional<bool> may_be_over(const Alternatives &where, const Formula &one, const Formula &other,
                                Unit unit, bool strictly) {
    const auto a = pieces_of(one, unit), b = pieces_of(other, unit);
    if (!a || !b) return std::nullopt;
    Alternatives all;
    for (const auto &x : *a)
        for (const auto &y : *b) {
            std::vector<Inequality> here = x.where;
            here.insert(here.end(), y.where.begin(), y.where.end());
            here.push_back({x.value - y.value, strictly});
            all.push_back(std::move(here));
        }
    return possible(both_of(where, all));
}

bool jumps_at(const Exact &edge, Slot by, const Formula &below, const Formula &above, std::int64_t times) {
    const Linear off = Linear::of(by) - Linear{{}, edge};
    const Alternatives there{{at_least_zero(off), at_least_zero(off.times(Exact(-1)))}};
    const Formula most = Formula::combine(
        Formula::Op::multiply, Formula::constant(Exact(times), Dimension::number), below, below.dimension());
    for (const Unit unit : {Unit::inch, Unit::millimetre})
        if (!is_over_nothing(there, below, unit) || !is_over_nothing(there, above, unit) ||
            may_be_over(there, most, above, unit, false) != false)
            return false;
    return true;
}

bool falls_at(const Exact &edge, Slot by, const Formula &below, const Formula &above, Unit unit) {
    const Linear off = Linear::of(by) - Linear{{}, edge};
    const Alternatives there{{at_least_zero(off), at_least_zero(off.times(Exact(-1)))}};
    return may_be_over(there, above, below, unit, false) == false &&
           may_be_over(there, below, above, unit) == true; // else one of them has no value there
}

std::optional<bool> lets_more_through(const Limit &one, const Limit &other, Compare compare,
                                      const std::vector<Condition> &where, const std::vector<Unit> &units,
                                      bool alike) {
    if (one.text == other.text) return false;
    bool known = true;
    for (const Unit unit : units) {
        Alternatives here = where_hold(where, unit);
        if (alike) here = both_of(here, {all_alike(one.formula, other.formula)});
        const auto over = is_maximum(compare) ? may_be_over(here, one.formula, other.formula, unit)
                                              : may_be_over(here, other.formula, one.formula, unit);
        if (over && *over) return true;
        known = known && over.has_value();
    }
    return known ? std::optional(false) : std::nullopt;
}

std::string times_apart(const Limit &one, const Limit &other) {
    if (shares_far_apart(one, other))
        return "differ " + std::to_string(most_times) + " times or more: is a decimal point a slip?";
    if (numbers_far_apart(one, other))
        return "have numbers that differ " + std::to_string(most_times) +
               " times or more: is a decimal point a slip?";
    if (!is_plain_size(one) || !is_plain_size(other)) return "";
    const Int128 a = one.formula.constant_value().rounded(), b = other.formula.constant_value().rounded();
    const Int128 times = std::max(a, b) / std::max<Int128>(std::min(a, b), 1);
    const std::string unit = unit_in(one.text), beside = unit_in(other.text);
    const bool in_two_units = !unit.empty() && !beside.empty() && unit != beside;
    if (times < (in_two_units ? most_times_by_unit : most_times)) return "";
    return "differ about " + std::to_string(static_cast<std::int64_t>(times)) + " times: is " +
           (in_two_units ? "'" + unit + "' or '" + beside + "' a slip" : "a decimal point or a unit a slip") +
           "?";
}

bool fits_by_ten(const Limit &limit, const Limit *stricter, const Limit *looser, bool upper) {
    const Limit *below = upper ? stricter : looser, *above = upper ? looser : stricter;
    for (const Limit *one : {&limit, below, above})
        if (one && !is_plain_size(*one)) return false;
    const auto fits = [&](const Exact &value) {
        return (!below || below->formula.constant_value() <= value) &&
               (!above || value <= above->formula.constant_value());
    };
    const Exact value = limit.formula.constant_value();
    if (!below || !above) { // where one side is open much would fit: a slip is a far one
        const Exact other = (below ? below : above)->formula.constant_value();
        if (value < other * Exact(3) && other < value * Exact(3)) return false;
    }
    return !fits(value) && (fits(value / Exact(10)) || fits(value * Exact(10)));
}

} // namespace beadbook
