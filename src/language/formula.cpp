#include "language/evaluate.hpp"

#include <set>

namespace beadbook {
namespace {

/// Knows nothing: for what is the same everywhere.
struct NoValues {
    bool has(Slot) const { return false; }
    Exact operator[](Slot) const { return 0; }
};

} // namespace

Formula Formula::constant(const Exact &value, Dimension dimension) {
    Formula f;
    Node node;
    node.constant = value;
    f.nodes_.push_back(std::move(node));
    f.dimension_ = dimension;
    return f;
}

Formula Formula::of(Slot quantity, Dimension dimension) {
    Formula f;
    Node node;
    node.op = Op::quantity;
    node.quantity = quantity;
    f.nodes_.push_back(std::move(node));
    f.dimension_ = dimension;
    f.uses_ = std::uint64_t{1} << quantity;
    return f;
}

Formula Formula::of(std::shared_ptr<const Table> table, Dimension dimension) {
    Formula f;
    f.uses_ = table->by.uses_;
    f.twins_ = table->by.twins_;
    for (const auto &row : table->rows) {
        f.uses_ |= row.value.uses_;
        f.twins_ = f.twins_ || row.value.twins_;
        f.blanks_ = f.blanks_ || row.value.blanks_;
    }
    Node node;
    node.op = Op::table;
    node.table = std::move(table);
    f.nodes_.push_back(std::move(node));
    f.dimension_ = dimension;
    return f;
}

Formula Formula::blank(Slot index, Dimension dimension) {
    Formula f;
    Node node;
    node.op = Op::blank;
    node.quantity = index;
    f.nodes_.push_back(std::move(node));
    f.dimension_ = dimension;
    f.blanks_ = true;
    return f;
}

Formula Formula::combine(Op op, const Formula &left, const Formula &right, Dimension dimension) {
    Formula f;
    f.uses_ = left.uses_ | right.uses_;
    f.twins_ = op == Op::twin || left.twins_ || right.twins_;
    f.blanks_ = left.blanks_ || right.blanks_;
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
    if (f.is_constant()) {
        const Evaluated value = f.evaluate(NoValues{});
        if (value.known()) f = constant(value.value, dimension);
    }
    return f;
}

Exact Formula::constant_value() const {
    const Node &root = nodes_.back();
    return root.op == Op::constant ? root.constant : evaluate(NoValues{}).value;
}

Exact Formula::constant_limit(Compare compare) const { return limit(NoValues{}, compare).value; }

std::vector<Slot> Formula::quantities() const {
    std::vector<Slot> out;
    for (Slot i = 0; i < 64; ++i)
        if (uses(i)) out.push_back(i);
    return out;
}

std::optional<Slot> Formula::lone_quantity() const {
    if (nodes_.size() != 1 || nodes_[0].op != Op::quantity) return std::nullopt;
    return nodes_[0].quantity;
}

std::vector<const Table *> Formula::tables() const {
    std::vector<const Table *> out;
    for (const auto &node : nodes_)
        if (node.table) out.push_back(node.table.get());
    return out;
}

std::vector<Slot> Formula::blanks() const {
    std::set<Slot> out;
    for (const auto &node : nodes_) {
        if (node.op == Op::blank) out.insert(node.quantity);
        if (!node.table) continue;
        for (const auto &row : node.table->rows)
            for (const Slot one : row.value.blanks()) out.insert(one);
    }
    return {out.begin(), out.end()};
}

Formula Formula::filled(const std::map<Slot, Exact> &values) const {
    Formula out = *this;
    out.blanks_ = false;
    for (auto &node : out.nodes_) {
        if (const auto value = values.find(node.quantity); node.op == Op::blank && value != values.end()) {
            node.op = Op::constant;
            node.constant = value->second;
            node.quantity = 0;
        }
        out.blanks_ = out.blanks_ || node.op == Op::blank;
        if (!node.table) continue;
        auto table = std::make_shared<Table>(*node.table);
        for (auto &row : table->rows) {
            row.value = row.value.filled(values);
            out.blanks_ = out.blanks_ || row.value.blanks_;
        }
        node.table = std::move(table);
    }
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
