#pragma once

#include "language/quantity_name.hpp"

#include <limits>
#include <memory>
#include <span>
#include <string>
#include <vector>

namespace beadbook {

/// Numbers known at one moment, looked up by quantity. A coupon's stay in one table that is shared by all
/// formulas; an indication's, a pair's and a group's are laid over it.
struct Environment {
    class Values {
    public:
        /// What was measured is a whole number of base units; one that does not fit is left unknown.
        void set(Quantity q, const Exact &v) {
            constexpr std::int64_t most = std::numeric_limits<std::int64_t>::max();
            if (!v.is_whole() || v > Exact(most) || v < Exact(-most)) return forget(q);
            value_[index_of(q)] = static_cast<std::int64_t>(v.num());
            known_ |= std::uint32_t{1} << index_of(q);
        }
        void forget(Quantity q) { known_ &= ~(std::uint32_t{1} << index_of(q)); }
        void clear() { known_ = 0; }
        bool has(Quantity q) const { return (known_ >> index_of(q)) & 1u; }
        std::int64_t operator[](Quantity q) const { return value_[index_of(q)]; }

    private:
        std::array<std::int64_t, quantity_count> value_{};
        std::uint32_t known_ = 0;
    };
    const Values &coupon;
    const Values *local = nullptr; ///< indication, pair and group

    const Values &home_of(Quantity q) const {
        return index_of(q) < coupon_quantities || !local ? coupon : *local;
    }
};

/// The outcome of a formula: a value, or what was missing.
struct Evaluated {
    Exact value;
    Missing missing;
    bool known() const { return !missing.any(); }
};

struct Table;

/// A typed expression, compiled once: T/3, 0.1 x leg + 0.03 in, lesser of T/3 and 0.060 in, table fillet.
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
        table
    };
    struct Node {
        Op op = Op::constant;
        Quantity quantity = Quantity::thinner;
        std::uint16_t left = 0, right = 0;
        Exact constant;
        std::shared_ptr<const Table> table;
    };

    Formula() = default;

    /// Builders check nothing: the parser has done so.
    static Formula constant(const Exact &value, Dimension dimension);
    static Formula of(Quantity q);
    static Formula of(std::shared_ptr<const Table> table, Dimension dimension);
    static Formula combine(Op op, const Formula &left, const Formula &right, Dimension dimension);

    Evaluated evaluate(const Environment &env) const;

    Dimension dimension() const { return dimension_; }
    bool uses(Quantity q) const { return (uses_ >> index_of(q)) & 1u; }
    /// The widest scope that is spoken of.
    bool uses_scope(Scope scope) const;
    std::vector<Quantity> quantities() const;
    bool is_constant() const { return uses_ == 0; }
    /// Of a constant formula.
    Exact constant_value() const;
    /// Speaks of the coupon only, so it has one value for all indications.
    bool of_coupon() const { return (uses_ >> coupon_quantities) == 0; }
    /// Tables that it looks into.
    std::vector<const Table *> tables() const;

    std::string text;                 ///< as the author wrote it
    std::vector<std::string> symbols; ///< the author's names of quantities(), in the same order

private:
    Evaluated evaluate(std::size_t node, const Environment &env) const;

    std::vector<Node> nodes_; ///< children before parents; the root is last
    Dimension dimension_ = Dimension::number;
    std::uint32_t uses_ = 0;
};

enum class Compare : std::uint8_t { over, at_least, under, at_most };
std::string_view name_of(Compare c);
bool holds(const Exact &a, Compare c, const Exact &b);
/// The comparison whose words come next, by a parser's own `keyword(text)`, which takes them if they do.
template <class Keyword>
std::optional<Compare> compare_words(Keyword keyword) {
    if (keyword("over")) return Compare::over;
    if (keyword("from") || keyword("at least")) return Compare::at_least;
    if (keyword("under") || keyword("below")) return Compare::under;
    if (keyword("up to") || keyword("to") || keyword("at most")) return Compare::at_most;
    return std::nullopt;
}
/// at most, under: larger is worse.
constexpr bool is_maximum(Compare c) { return c == Compare::at_most || c == Compare::under; }

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
    };
    std::string name;
    Formula by;
    Exact step; ///< `by` is rounded to this before the look-up; 0: not rounded
    std::vector<Row> rows;

    /// The row whose band holds `value`, or null.
    const Row *row_for(const Exact &value) const;
};

} // namespace beadbook
