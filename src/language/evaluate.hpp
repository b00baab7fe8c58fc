#pragma once

#include "language/formula.hpp"

#include <algorithm>
#include <stdexcept>

namespace beadbook {

/// The unit in which the work is measured, if the values tell it.
template <class Values>
std::optional<Unit> measured_unit(const Values &values) {
    if constexpr (requires { values.measured_in(); })
        return values.measured_in();
    else
        return std::nullopt;
}

template <class Values>
Evaluated Formula::evaluate(const Values &values) const {
    return evaluate_in(values, measured_unit(values));
}

template <class Values>
Evaluated Formula::limit(const Values &values, Compare compare) const {
    const std::optional<Unit> unit = measured_unit(values);
    if (!twins_ || unit) return evaluate_in(values, unit);
    const Evaluated inch = evaluate_in(values, Unit::inch);
    const Evaluated metric = evaluate_in(values, Unit::millimetre);
    if (!inch.known() || !metric.known()) return inch.known() ? metric : inch;
    return (metric.value > inch.value) == is_maximum(compare) ? metric : inch;
}

template <class Values>
Evaluated Formula::evaluate_in(const Values &values, std::optional<Unit> unit) const {
    try {
        return evaluate(nodes_.size() - 1, values, unit);
    } catch (const std::range_error &) {
        return {0, Missing::exact_number()};
    } catch (const std::domain_error &) {
        return {0, Missing::exact_number()};
    }
}

template <class Values>
Evaluated Formula::evaluate(std::size_t index, const Values &values, std::optional<Unit> unit) const {
    const Node &node = nodes_[index];
    switch (node.op) {
    case Op::constant: return {node.constant, {}};
    case Op::quantity: {
        if (!values.has(node.quantity)) return {0, Missing::quantity(node.quantity)};
        return {values[node.quantity], {}};
    }
    case Op::blank: return {0, Missing::blank()};
    case Op::table: {
        Evaluated key = node.table->by.evaluate_in(values, unit);
        if (!key.known()) return key;
        const Table::Row *row = node.table->row_for(key.value);
        return row ? row->value.evaluate_in(values, unit) : Evaluated{0, Missing::table_value()};
    }
    default: break;
    }
    const Evaluated a = evaluate(node.left, values, unit);
    const Evaluated b = evaluate(node.right, values, unit);
    if (!a.known() || !b.known()) return {0, a.missing | b.missing};
    switch (node.op) {
    case Op::add: return {a.value + b.value, {}};
    case Op::subtract: return {a.value - b.value, {}};
    case Op::multiply: return {a.value * b.value, {}};
    case Op::divide: return {a.value / b.value, {}};
    case Op::twin:
        if (!unit) return {std::max(a.value, b.value), {}};
        return *unit == Unit::inch ? a : b;
    case Op::least: return {std::min(a.value, b.value), {}};
    default: return {std::max(a.value, b.value), {}};
    }
}

} // namespace beadbook
