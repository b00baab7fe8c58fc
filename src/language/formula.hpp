#pragma once

#include "language/issue.hpp"
#include "language/missing.hpp"
#include "measure/dimension.hpp"
#include "measure/quantity.hpp"

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace beadbook {

enum class Compare : std::uint8_t { over, at_least, under, at_most };
std::string_view name_of(Compare c);
inline bool holds(const Exact &a, Compare c, const Exact &b) {
    switch (c) {
    case Compare::over: return a > b;
    case Compare::at_least: return a >= b;
    case Compare::under: return a < b;
    case Compare::at_most: break;
    }
    return a <= b;
}
/// at most, under: larger is worse.
constexpr bool is_maximum(Compare c) { return c == Compare::at_most || c == Compare::under; }

/// The outcome of a formula: a value, or what was missing.
struct Evaluated {
    Exact value;
    Missing missing;
    bool known() const { return !missing.any(); }
};

struct Table;

/// A typed expression, compiled once: T/3, 0.1 x leg + 0.03 in, lesser of T/3 and 0.060 in, table fillet,
/// 1/16 in or 1.6 mm (one value, printed in both units).
/// Quantities are slots; where their values come from is the evaluating floor's to say.
class Formula {
public:
    enum class Op : std::uint8_t {
        constant,
        quantity,
        add,
        subtract,
        multiply,
        divide,
        least,
        greatest,
        table,
        twin, ///< one printed value in US (left) and in metric units (right)
        blank ///< a value that is filled in later: `quantity` is its index in the file's list of blanks
    };
    struct Node {
        Op op = Op::constant;
        Slot quantity = 0;
        std::uint16_t left = 0, right = 0;
        Exact constant;
        std::shared_ptr<const Table> table;
    };

    Formula() = default;

    /// Builders check nothing: the parser has done so.
    static Formula constant(const Exact &value, Dimension dimension);
    static Formula of(Slot quantity, Dimension dimension);
    static Formula of(std::shared_ptr<const Table> table, Dimension dimension);
    static Formula blank(Slot index, Dimension dimension);
    static Formula combine(Op op, const Formula &left, const Formula &right, Dimension dimension);

    /// `Values` has `bool has(Slot) const` and `operator[](Slot) const`, whose outcome becomes an Exact.
    /// Defined in language/evaluate.hpp; the judge's own values are compiled once (criteria/environment.cpp).
    template <class Values>
    Evaluated evaluate(const Values &values) const;
    /// As a limit. Of printed twins the one in the unit in which the work is measured counts, which `values`
    /// may tell by `std::optional<Unit> measured_in() const`; where that is not fixed, the one that lets more
    /// through: the standard prints both, so either meets it. `evaluate` then takes the larger.
    template <class Values>
    Evaluated limit(const Values &values, Compare compare) const;

    Dimension dimension() const { return dimension_; }
    bool uses(Slot quantity) const { return (uses_ >> quantity) & 1u; }
    /// All slots below it, or none at all.
    bool uses_only_below(Slot end) const { return (uses_ >> end) == 0; }
    std::vector<Slot> quantities() const;
    /// A quantity alone, without arithmetic.
    std::optional<Slot> lone_quantity() const;
    bool is_constant() const { return uses_ == 0 && !twins_ && !blanks_; }
    /// Of a constant formula.
    Exact constant_value() const;
    /// Of one without quantities, as a limit where the unit is not fixed.
    Exact constant_limit(Compare compare) const;
    bool has_twins() const { return twins_; }
    /// Until they are filled it has no value.
    bool has_blanks() const { return blanks_; }
    /// Indexes of the blanks that it speaks of, those of its tables too; ascending.
    std::vector<Slot> blanks() const;
    /// The same with the blanks filled of which `values` holds one, by index.
    Formula filled(const std::map<Slot, Exact> &values) const;
    /// Tables that it looks into.
    std::vector<const Table *> tables() const;
    /// Children before parents, the root last: for those who reason about it. Never empty once it was read.
    const std::vector<Node> &nodes() const { return nodes_; }

    std::string text;                 ///< as the author wrote it
    std::vector<std::string> symbols; ///< the author's names of quantities(), in the same order

private:
    template <class Values>
    Evaluated evaluate(std::size_t node, const Values &values, std::optional<Unit> unit) const;
    template <class Values>
    Evaluated evaluate_in(const Values &values, std::optional<Unit> unit) const;

    std::vector<Node> nodes_; ///< children before parents; the root is last
    Dimension dimension_ = Dimension::number;
    std::uint64_t uses_ = 0;
    bool twins_ = false;
    bool blanks_ = false;
};

/// A look-up by bands. Edges belong to the side that the words say: `over 1/8 in to 3/16 in`.
struct Table {
    struct Edge {
        Compare compare;
        Exact value;
    };
    struct Row {
        std::vector<Edge> band;
        Formula value;
        std::string text; ///< the band as written
        Where where = {}; ///< of it in its file
    };
    std::string name;
    Formula by;
    Exact step; ///< `by` is rounded to this before the look-up; 0: not rounded
    std::vector<Row> rows;
    Where where; ///< of it in its file

    /// The row whose band holds `value`, or null.
    const Row *row_for(const Exact &value) const;
};

} // namespace beadbook
