#pragma once

#include "language/formula.hpp"

#include <algorithm>
#include <stdexcept>

namespace beadbook {

template <class Values>
Evaluated Formula::evaluate(const Values &values) const {
    try {
        return evaluate(nodes_.size() - 1, values);
    } catch (const std::range_error &) {
        return {0, Missing::exact_number()};
    } catch (const std::domain_error &) {
        return {0, Missing::exact_number()};
    }
}

template <class Values>
Evaluated Formula::evaluate(std::size_t index, const Values &values) const {
    const Node &node = nodes_[index];
    switch (node.op) {
    case Op::constant: return {node.constant, {}};
    case Op::quantity: {
        if (!values.has(node.quantity)) return {0, Missing::quantity(node.quantity)};
        return {values[node.quantity], {}};
    }
    case Op::table: {
        Evaluated key = node.table->by.evaluate(values);
        if (!key.known()) return key;
        const Table::Row *row = node.table->row_for(key.value);
        return row ? row->value.evaluate(values) : Evaluated{0, Missing::table_value()};
    }
    default: break;
    }
    const Evaluated a = evaluate(node.left, values);
    const Evaluated b = evaluate(node.right, values);
    if (!a.known() || !b.known()) return {0, a.missing | b.missing};
    switch (node.op) {
    case Op::add: return {a.value + b.value, {}};
    case Op::subtract: return {a.value - b.value, {}};
    case Op::multiply: return {a.value * b.value, {}};
    case Op::divide: return {a.value / b.value, {}};
    case Op::least: return {std::min(a.value, b.value), {}};
    default: return {std::max(a.value, b.value), {}};
    }
}

} // namespace beadbook
