#include "language/formula.hpp"

#include <algorithm>

namespace beadbook {

Formula Formula::constant(const Exact &value, Dimension dimension) {
    Formula f;
    Node node;
    node.constant = value;
    f.nodes_.push_back(std::move(node));
    f.dimension_ = dimension;
    return f;
}

Formula Formula::of(Quantity q) {
    Formula f;
    Node node;
    node.op = Op::quantity;
    node.quantity = q;
    f.nodes_.push_back(std::move(node));
    f.dimension_ = info(q).dimension;
    f.uses_ = std::uint32_t{1} << index_of(q);
    return f;
}

Formula Formula::of(std::shared_ptr<const Table> table, Dimension dimension) {
    Formula f;
    f.uses_ = table->by.uses_;
    for (const auto &row : table->rows) f.uses_ |= row.value.uses_;
    Node node;
    node.op = Op::table;
    node.table = std::move(table);
    f.nodes_.push_back(std::move(node));
    f.dimension_ = dimension;
    return f;
}

Formula Formula::combine(Op op, const Formula &left, const Formula &right, Dimension dimension) {
    Formula f;
    f.uses_ = left.uses_ | right.uses_;
    f.dimension_ = dimension;
    f.nodes_ = left.nodes_;
    const auto shift = static_cast<std::uint16_t>(left.nodes_.size());
    for (Node node : right.nodes_) {
        node.left = static_cast<std::uint16_t>(node.left + shift);
        node.right = static_cast<std::uint16_t>(node.right + shift);
        f.nodes_.push_back(std::move(node));
    }
    Node root;
    root.op = op;
    root.left = static_cast<std::uint16_t>(shift - 1);
    root.right = static_cast<std::uint16_t>(f.nodes_.size() - 1);
    f.nodes_.push_back(std::move(root));
    // Fold what cannot change, so that judging does not compute 3/16 + 1/8 a million times.
    if (f.uses_ == 0 && op != Op::table) {
        const Environment::Values nothing;
        const Evaluated value = f.evaluate({nothing});
        if (value.known()) f = constant(value.value, dimension);
    }
    return f;
}

Exact Formula::constant_value() const {
    const Environment::Values nothing;
    return evaluate({nothing}).value;
}

Evaluated Formula::evaluate(const Environment &env) const {
    try {
        return evaluate(nodes_.size() - 1, env);
    } catch (const std::range_error &) {
        return {0, Missing::exact_number()};
    } catch (const std::domain_error &) {
        return {0, Missing::exact_number()};
    }
}

Evaluated Formula::evaluate(std::size_t index, const Environment &env) const {
    const Node &node = nodes_[index];
    switch (node.op) {
    case Op::constant: return {node.constant, {}};
    case Op::quantity: {
        const auto &home = env.home_of(node.quantity);
        if (!home.has(node.quantity)) return {0, Missing::of(node.quantity)};
        return {home[node.quantity], {}};
    }
    case Op::table: {
        Evaluated key = node.table->by.evaluate(env);
        if (!key.known()) return key;
        const Table::Row *row = node.table->row_for(key.value);
        return row ? row->value.evaluate(env) : Evaluated{0, Missing::table_value()};
    }
    default: break;
    }
    const Evaluated a = evaluate(node.left, env);
    const Evaluated b = evaluate(node.right, env);
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

bool Formula::uses_scope(Scope scope) const {
    const auto all = quantities();
    return std::any_of(all.begin(), all.end(), [&](Quantity q) { return info(q).scope == scope; });
}

std::vector<Quantity> Formula::quantities() const {
    std::vector<Quantity> out;
    for (std::size_t i = 0; i < quantity_count; ++i)
        if ((uses_ >> i) & 1u) out.push_back(static_cast<Quantity>(i));
    return out;
}

std::vector<const Table *> Formula::tables() const {
    std::vector<const Table *> out;
    for (const auto &node : nodes_)
        if (node.table) out.push_back(node.table.get());
    return out;
}

std::string_view name_of(Compare c) {
    switch (c) {
    case Compare::over: return "over";
    case Compare::at_least: return "at least";
    case Compare::under: return "under";
    case Compare::at_most: break;
    }
    return "at most";
}

bool holds(const Exact &a, Compare c, const Exact &b) {
    switch (c) {
    case Compare::over: return a > b;
    case Compare::at_least: return a >= b;
    case Compare::under: return a < b;
    case Compare::at_most: break;
    }
    return a <= b;
}

const Table::Row *Table::row_for(const Exact &given) const {
    Exact value = given;
    if (step > Exact(0)) value = Exact::whole((given / step).rounded()) * step;
    for (const auto &row : rows)
        if (std::all_of(row.band.begin(), row.band.end(),
                        [&](const Edge &edge) { return holds(value, edge.compare, edge.value); }))
            return &row;
    return nullptr;
}

} // namespace beadbook
