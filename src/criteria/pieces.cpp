#include "criteria/pieces.hpp"

#include <algorithm>
#include <bitset>

namespace beadbook {
namespace {

constexpr std::size_t most_pieces = 200;

/// The formula is not of the kind that can be taken apart.
struct NotLinear {};

using Pieces = std::vector<Piece>;

std::vector<Inequality> joined(std::vector<Inequality> a, const std::vector<Inequality> &b) {
    a.insert(a.end(), b.begin(), b.end());
    return a;
}

Inequality held_to(const Linear &left, Compare compare, const Linear &right) {
    const bool strict = compare == Compare::over || compare == Compare::under;
    return {is_maximum(compare) ? right - left : left - right, strict};
}

/// `by` in the band after rounding to the step: between two steps lies what rounds to either.
Inequality in_rounded_band(const Linear &by, const Table::Edge &edge, const Exact &step) {
    if (!(step > Exact(0))) return held_to(by, edge.compare, Linear{{}, edge.value});
    const Exact steps = edge.value / step;
    const Exact below = Exact::whole((steps.num() >= 0 ? steps.num() : steps.num() - steps.den() + 1) /
                                     Int128(steps.den())); // the last whole step not over the edge
    const bool on_step = below == steps;
    // The first step that the band holds, or (for a maximum) the first that it does not.
    const bool next = edge.compare == Compare::over || edge.compare == Compare::at_most || !on_step;
    const Exact border = ((next ? below + Exact(1) : below) - Exact::fraction(1, 2)) * step;
    return held_to(by, is_maximum(edge.compare) ? Compare::under : Compare::at_least, Linear{{}, border});
}

class Taking {
public:
    Taking(const Formula &formula, Unit unit) : nodes_(formula.nodes()), unit_(unit) {}

    Pieces all() const { return nodes_.empty() ? throw NotLinear() : at(nodes_.size() - 1); }

    Pieces at(std::size_t index) const {
        const Formula::Node &node = nodes_[index];
        using Op = Formula::Op;
        switch (node.op) {
        case Op::constant: return {{{}, {{}, node.constant}}};
        case Op::quantity: return {{{}, Linear::of(node.quantity)}};
        case Op::table: return of_table(*node.table);
        case Op::blank: throw NotLinear(); // nobody knows it yet
        case Op::twin: return at(unit_ == Unit::inch ? node.left : node.right);
        default: break;
        }
        Pieces out;
        const Pieces right = at(node.right);
        for (const auto &a : at(node.left))
            for (const auto &b : right) add(node.op, a, b, out);
        return out.size() > most_pieces ? throw NotLinear() : out;
    }

private:
    static void add(Formula::Op op, const Piece &a, const Piece &b, Pieces &out) {
        std::vector<Inequality> where = joined(a.where, b.where);
        using Op = Formula::Op;
        switch (op) {
        case Op::add: return out.push_back({std::move(where), a.value + b.value});
        case Op::subtract: return out.push_back({std::move(where), a.value - b.value});
        case Op::multiply: {
            if (!a.value.is_constant() && !b.value.is_constant()) throw NotLinear();
            const bool first = a.value.is_constant();
            return out.push_back({std::move(where),
                                  first ? b.value.times(a.value.constant) : a.value.times(b.value.constant)});
        }
        case Op::divide:
            if (!b.value.is_constant() || b.value.constant == Exact(0)) throw NotLinear();
            return out.push_back({std::move(where), a.value.times(Exact(1) / b.value.constant)});
        default: break;
        }
        const Linear gap = op == Op::least ? b.value - a.value : a.value - b.value;
        if (gap.is_constant()) // one of them wins everywhere
            return out.push_back({std::move(where), gap.constant < Exact(0) ? b.value : a.value});
        out.push_back({joined(where, {at_least_zero(gap)}), a.value});
        out.push_back({joined(where, {over_zero(gap.times(Exact(-1)))}), b.value});
    }

    Pieces of_table(const Table &table) const {
        Pieces out;
        for (const auto &by : Taking(table.by, unit_).all())
            for (const auto &row : table.rows) {
                std::vector<Inequality> band = by.where;
                for (const auto &edge : row.band) band.push_back(in_rounded_band(by.value, edge, table.step));
                for (const auto &value : Taking(row.value, unit_).all())
                    out.push_back({joined(band, value.where), value.value});
            }
        return out.size() > most_pieces ? throw NotLinear() : out;
    }

    const std::vector<Formula::Node> &nodes_;
    Unit unit_;
};

void add_divisors(const Formula &formula, Unit unit, std::vector<Pieces> &out) {
    for (const auto &node : formula.nodes()) {
        if (node.table) {
            add_divisors(node.table->by, unit, out);
            for (const auto &row : node.table->rows) add_divisors(row.value, unit, out);
        }
        if (node.op != Formula::Op::divide) continue;
        try {
            out.push_back(Taking(formula, unit).at(node.right));
        } catch (const NotLinear &) {
            continue;
        } catch (const std::range_error &) {
            continue;
        }
    }
}

} // namespace

std::optional<std::vector<Piece>> pieces_of(const Formula &formula, Unit unit) {
    try {
        return Taking(formula, unit).all();
    } catch (const NotLinear &) {
        return std::nullopt;
    } catch (const std::range_error &) {
        return std::nullopt;
    }
}

std::vector<std::vector<Piece>> divisors_of(const Formula &formula, Unit unit) {
    std::vector<Pieces> out;
    add_divisors(formula, unit, out);
    return out;
}

Alternatives both_of(const Alternatives &a, const Alternatives &b) {
    Alternatives out;
    for (const auto &x : a)
        for (const auto &y : b) out.push_back(joined(x, y));
    return out;
}

Alternatives where_hold(const std::vector<Condition> &conditions, Unit unit) {
    Alternatives out{{}};
    for (const auto &c : conditions) {
        if (c.kind != Condition::Kind::comparison) continue;
        const auto left = pieces_of(c.left, unit);
        if (!left) continue;
        for (const auto &edge : c.edges) {
            const auto right = pieces_of(edge.right, unit);
            if (!right) continue;
            Alternatives here;
            for (const auto &l : *left)
                for (const auto &r : *right)
                    here.push_back(
                        joined(joined(l.where, r.where), {held_to(l.value, edge.compare, r.value)}));
            if (out.size() * here.size() <= most_pieces) out = both_of(out, here);
        }
    }
    return out;
}

std::vector<Inequality> by_nature(const Alternatives &of) {
    std::bitset<Missing::most_quantities> slots;
    for (const auto &all : of)
        for (const auto &one : all)
            for (const auto &[slot, factor] : one.sum.factors) slots.set(slot);
    std::vector<Inequality> out;
    for (std::size_t at = 0; at < slots.size(); ++at) {
        if (!slots[at]) continue;
        const Quantity q = static_cast<Quantity>(at);
        if (info(q).dimension == Dimension::temperature) continue;
        const bool may_be_none = q == Quantity::gap || is_way_to_nearest(q);
        out.push_back({Linear::of(slot_of(q)), !may_be_none});
    }
    constexpr std::array ordered{std::pair{Quantity::thinner, Quantity::thicker},
                                 std::pair{Quantity::smaller_size, Quantity::larger_size},
                                 std::pair{Quantity::shorter_length, Quantity::longer_length}};
    for (const auto &[less, more] : ordered)
        if (slots[slot_of(less)] && slots[slot_of(more)])
            out.push_back(at_least_zero(Linear::of(slot_of(more)) - Linear::of(slot_of(less))));
    return out;
}

std::optional<bool> possible(const Alternatives &all) {
    const std::vector<Inequality> nature = by_nature(all);
    bool known = all.size() <= most_pieces * 4;
    for (std::size_t i = 0; known && i < all.size(); ++i) {
        const auto holds_so = can_hold(joined(all[i], nature));
        if (holds_so && *holds_so) return true;
        known = holds_so.has_value();
    }
    return known ? std::optional(false) : std::nullopt;
}

} // namespace beadbook
