// What a rule can reach in the coupons that the set covers: nothing, all or none of its finds, a limit below
// 0.
#include "criteria/doubts.hpp"
#include "criteria/limit_order.hpp"
#include "criteria/scope_reach.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

const std::vector<Unit> both_units{Unit::inch, Unit::millimetre};

/// A table may be rounded to a step: what is not over its end by more than this is not told.
const Exact table_slack = 25'400;

/// True in every unit.
template <class Asked>
bool in_all(const std::vector<Unit> &units, Asked asked) {
    return std::all_of(units.begin(), units.end(), asked);
}

class Reach {
public:
    Reach(const CriteriaSet &set, std::size_t index, Doubts &doubts)
        : set_(set), index_(index), rule_(set.rules[index]), doubts_(doubts),
          conditions_(conditions_of(set, rule_)), units_(units_to_try(set, rule_)),
          in_inches_(where_hold(conditions_, Unit::inch)),
          in_millimetres_(where_hold(conditions_, Unit::millimetre)) {}

    void check() {
        if (outside_scope()) return;
        std::vector<std::string> never, always;
        check_wording();
        std::vector<const Table *> seen;
        for (std::size_t c = 0; c < rule_.limits.size(); ++c) {
            if (rule_.limits[c].kind != Limit::Kind::value) continue;
            if (check_number(c)) return;
            for (const Table *table : rule_.limits[c].formula.tables())
                if (std::find(seen.begin(), seen.end(), table) == seen.end())
                    check_table(*seen.emplace_back(table));
            if (never_over(c) || held_with_none(c)) never.push_back(set_.classes[c].id);
            if (always_over(c)) always.push_back(set_.classes[c].id);
        }
        if (!never.empty())
            tell("never-decisive", "it never rejects for class " + listed_classes(never) +
                                       ": what it measures is always within the limit");
        if (!always.empty())
            tell("always-rejects", "it always rejects for class " + listed_classes(always) +
                                       ": what it speaks of" +
                                       (rule_.where.empty() ? "" : ", " + quoted(rule_.where) + ",") +
                                       " is never within the limit; 'none' says so");
    }

private:
    static std::string listed_classes(const std::vector<std::string> &all) {
        std::string out;
        for (const auto &one : all) out += (out.empty() ? "" : ", ") + one;
        return out;
    }
    void tell(std::string_view check, const std::string &text) {
        doubts_.tell(check, rule_.id, rule_.where_from, "rules." + rule_.id, text);
    }
    const Alternatives &where(Unit unit) const { return unit == Unit::inch ? in_inches_ : in_millimetres_; }

    /// Also where its own conditions never hold together, which is told elsewhere.
    bool outside_scope() {
        std::vector<Condition> own = rule_.when;
        own.insert(own.end(), rule_.where.begin(), rule_.where.end());
        if (in_all(both_units, [&](Unit u) { return possible(where_hold(own, u)) == false; })) return true;
        const bool outside = hold_outside_scope_only(set_, own);
        if (outside)
            tell("outside-scope",
                 "it speaks only of coupons that the set does not cover, by its 'scope': " + which_of(own));
        return outside || deeper_than_wall();
    }

    static std::string quoted(const std::vector<Condition> &conditions) {
        std::vector<std::string> out;
        for (const auto &c : conditions) out.push_back("'" + c.text + "'");
        return listed(out, "and");
    }
    /// The one that alone is outside, if there is one.
    std::string which_of(const std::vector<Condition> &own) const {
        for (const auto &c : own)
            if (hold_outside_scope_only(set_, {c})) return quoted({c});
        return quoted(own);
    }

    /// `where: depth over 1 in` of walls to 1/2 in: there is no such find.
    bool deeper_than_wall() {
        const auto never = [&](Quantity measure, Quantity wall) {
            return in_all(units_, [&](Unit u) {
                return may_be_over(where(u), formula_of(wall), formula_of(measure), u, false) == false;
            });
        };
        for (const auto &c : rule_.where) {
            if (c.left.lone_quantity() != slot_of(Quantity::depth)) continue;
            if (!never(Quantity::depth, Quantity::thinner) && !never(Quantity::depth, Quantity::thicker) &&
                !never(Quantity::depth, Quantity::weld_thickness))
                continue;
            tell("outside-scope", "it never speaks of a find: '" + c.text +
                                      "' is deeper than the thickest wall that the set covers");
            return true;
        }
        return false;
    }

    /// Limits and windows that are no measure at all; true if one was told.
    bool check_number(std::size_t c) {
        for (const Unit unit : units_) {
            std::vector<const Formula *> formulas{&rule_.limits[c].formula};
            if (const Window *window = rule_.window(c); window && window->kind == Window::Kind::length)
                formulas.push_back(&window->length);
            for (const Formula *formula : formulas) {
                if (divides_by_zero(*formula, unit)) {
                    tell("division-by-zero", "'" + formula->text + "' divides by what may be 0 here");
                    return true;
                }
                const bool window = formula != formulas.front();
                // A limit below 0 that asks for at least so much only asks for nothing.
                if (!window && !is_maximum(rule_.compare)) continue;
                if (below_zero(*formula, unit, window)) {
                    tell("negative-limit", "'" + formula->text + "' falls " + (window ? "to" : "below") +
                                               " 0 for coupons that the rule speaks of");
                    return true;
                }
            }
        }
        return false;
    }

    /// Limits that say more, or less, than they seem to; each told once.
    void check_wording() {
        bool count = false, idle = false;
        for (std::size_t c = 0; c < rule_.limits.size(); ++c) {
            const Limit &limit = rule_.limits[c];
            if (limit.kind != Limit::Kind::value) continue;
            if (!count && rule_.kind == Rule::Kind::count && limit.formula.is_constant() &&
                !limit.formula.constant_value().is_whole()) {
                count = true;
                tell("broken-count", "'" + limit.text + "' is no whole number, and what it holds is counted");
            }
            if (!idle && has_idle_part(limit.formula)) {
                idle = true;
                tell("idle-part", "in '" + limit.text + "' one part never decides where the rule speaks");
            }
        }
    }
    /// `lesser of T/2 and 1 mm` of thick members only: T/2 never does. Tables are for many rules, and most
    /// need some of their rows.
    bool has_idle_part(const Formula &formula) const {
        if (!formula.tables().empty()) return false;
        if (formula.is_constant()) // then it was reckoned out, and only its words tell
            return formula.text.find("lesser of ") != std::string::npos ||
                   formula.text.find("greater of ") != std::string::npos;
        return std::any_of(units_.begin(), units_.end(), [&](Unit unit) {
            const auto pieces = pieces_of(formula, unit);
            return pieces && pieces->size() > 1 &&
                   std::any_of(pieces->begin(), pieces->end(), [&](const Piece &piece) {
                       return possible(both_of(where(unit), {piece.where})) == false;
                   });
        });
    }

    /// Coupons that the rule and the scope bound on a side, and of which the table ends before that.
    void check_table(const Table &table) {
        const Unit unit = units_.front();
        const auto by = pieces_of(table.by, unit);
        if (!by) return;
        for (const bool upper : {true, false})
            if (const auto end = end_of(table, upper); end && beyond_end(*by, unit, *end, upper)) {
                tell("table-short-of-scope", "table '" + table.name + "' ends " +
                                                 (upper ? "below" : "above") +
                                                 " what the set covers: a size there has no value");
                return;
            }
    }
    /// The last value of its rows on that side; nothing where a row is open.
    static std::optional<Exact> end_of(const Table &table, bool upper) {
        std::optional<Exact> out;
        for (const auto &row : table.rows) {
            const auto edge = std::find_if(row.band.begin(), row.band.end(), [&](const Table::Edge &e) {
                return is_maximum(e.compare) == upper;
            });
            if (edge == row.band.end()) return std::nullopt;
            if (!out || (upper ? edge->value > *out : edge->value < *out)) out = edge->value;
        }
        return out;
    }
    bool beyond_end(const std::vector<Piece> &by, Unit unit, const Exact &end, bool upper) const {
        const auto past = [&](const Exact &value) {
            return possible_with(where(unit), by, [&](const Linear &size) {
                const Linear edge{{}, value};
                return std::vector{over_zero(upper ? size - edge : edge - size)};
            });
        };
        const Exact far = upper ? end * Exact(1'000'000) : end / Exact(1'000'000);
        return past(far) == false && past(end + (upper ? table_slack : Exact(0) - table_slack)) == true;
    }

    bool divides_by_zero(const Formula &formula, Unit unit) const {
        const auto divisors = divisors_of(formula, unit);
        return std::any_of(divisors.begin(), divisors.end(), [&](const std::vector<Piece> &pieces) {
            return possible_with(where(unit), pieces, [](const Linear &value) {
                       return std::vector{at_least_zero(value), at_least_zero(value.times(Exact(-1)))};
                   }) == true;
        });
    }

    bool below_zero(const Formula &formula, Unit unit, bool or_zero) const {
        if (formula.dimension() == Dimension::temperature) return false;
        const auto pieces = pieces_of(formula, unit);
        return pieces && possible_with(where(unit), *pieces, [&](const Linear &value) {
                             return std::vector<Inequality>{{value.times(Exact(-1)), !or_zero}};
                         }) == true;
    }

    /// A find of which the rule speaks and that is over the limit; not known: true.
    bool never_over(std::size_t c) const {
        const Formula &limit = rule_.limits[c].formula;
        const bool strictly = rule_.compare == Compare::at_most || rule_.compare == Compare::at_least;
        switch (rule_.kind) {
        case Rule::Kind::each: return in_all(units_, [&](Unit u) { return !beyond(limit, u, strictly); });
        case Rule::Kind::sum: return never_fills(c);
        case Rule::Kind::gap: return rule_.compare == Compare::at_least && never_over_zero(limit);
        case Rule::Kind::combine:
            return limit.is_constant() &&
                   limit.constant_value() >= Exact(static_cast<std::int64_t>(rule_.combined.size()));
        default: return false;
        }
    }
    /// No two are nearer than touching.
    bool never_over_zero(const Formula &limit) const {
        return in_all(units_, [&](Unit u) {
            return may_be_over(where(u), limit, Formula::constant(Exact(0), Dimension::length), u) == false;
        });
    }
    bool always_over(std::size_t c) const {
        if (rule_.kind != Rule::Kind::each) return false;
        const Formula &limit = rule_.limits[c].formula;
        const bool strictly = rule_.compare == Compare::under || rule_.compare == Compare::over;
        return in_all(units_, [&](Unit u) {
            const auto within = is_maximum(rule_.compare)
                                    ? may_be_over(where(u), limit, rule_.measure, u, strictly)
                                    : may_be_over(where(u), rule_.measure, limit, u, strictly);
            return within == false;
        });
    }

    /// Together with another rule, of which nothing is ever over.
    bool held_with_none(std::size_t c) const {
        if (!rule_.only_with) return false;
        const Rule &other = set_.rules[*rule_.only_with];
        const Limit &limit = other.limits[c];
        return limit.kind == Limit::Kind::free || limit.kind == Limit::Kind::other ||
               (*rule_.only_with < index_ && out_of_reach(other, limit));
    }
    /// More than ten walls: nothing that is found is as large.
    bool out_of_reach(const Rule &other, const Limit &limit) const {
        if (other.kind != Rule::Kind::each || limit.kind != Limit::Kind::value ||
            !is_maximum(other.compare) || limit.formula.dimension() != Dimension::length)
            return false;
        const auto under = [&](Quantity wall) {
            const Formula ten =
                Formula::combine(Formula::Op::multiply, Formula::constant(Exact(10), Dimension::number),
                                 formula_of(wall), Dimension::length);
            return in_all(
                units_, [&](Unit u) { return may_be_over(where(u), ten, limit.formula, u, false) == false; });
        };
        return under(Quantity::thinner) || under(Quantity::thicker) || under(Quantity::weld_thickness);
    }

    bool beyond(const Formula &limit, Unit unit, bool strictly) const {
        const auto over = is_maximum(rule_.compare)
                              ? may_be_over(where(unit), rule_.measure, limit, unit, strictly)
                              : may_be_over(where(unit), limit, rule_.measure, unit, strictly);
        return over != false;
    }

    /// The lengths in a stretch add to no more than the stretch.
    bool never_fills(std::size_t c) const {
        const Window *window = rule_.window(c);
        if (!window || rule_.summed != Quantity::length || window->kind == Window::Kind::area) return false;
        const Formula stretch =
            window->kind == Window::Kind::length ? window->length : formula_of(Quantity::weld_length);
        return in_all(units_, [&](Unit u) {
            return may_be_over(where(u), stretch, rule_.limits[c].formula, u) == false;
        });
    }

    const CriteriaSet &set_;
    std::size_t index_;
    const Rule &rule_;
    Doubts &doubts_;
    std::vector<Condition> conditions_;
    std::vector<Unit> units_;
    Alternatives in_inches_, in_millimetres_; ///< where the conditions hold
};

} // namespace

void check_reach(const CriteriaSet &set, Doubts &doubts) {
    for (std::size_t r = 0; r < set.rules.size(); ++r) Reach(set, r, doubts).check();
}

} // namespace beadbook
