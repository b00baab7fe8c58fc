// Limits, windows, groups and tables that can be read and cannot be meant, beside the wall that the set
// covers.
#include "criteria/doubts.hpp"
#include "criteria/into_wall.hpp"
#include "criteria/limit_order.hpp"
#include "criteria/remainder.hpp"
#include "criteria/vocabulary.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// More in a row is no group that a standard names (four, MIL-STD-2035A, read): a slip of the pen. Common
/// practice, no source.
constexpr std::size_t most_in_a_row = 12;

/// Three times is what standards say (ASME VIII-1 app. 8, read); more than this many nobody would call round.
constexpr std::int64_t longest_rounded = 10;

/// A pore has no one way to lie; what is longer than wide by its name may be longer than the wall.
bool speaks_of_pores(const Rule &rule) {
    return only_of(rule.subject.types, {"porosity"}) &&
           rule.subject.types[*Vocabulary::shipped().find("gas pore")] && rule.shape != Shape::linear;
}

std::string what_is_allowed(const Rule &rule) {
    return only_of(rule.subject.types, {"linear misalignment"}) ? "one member may stand past the other"
                                                                : "what goes through is allowed";
}

class Belief {
public:
    Belief(const CriteriaSet &set, const Rule &rule, Doubts &doubts)
        : set_(set), rule_(rule), doubts_(doubts), conditions_(conditions_of(set, rule)),
          units_(units_to_try(set, rule)), in_inches_(where_hold(conditions_, Unit::inch)),
          in_millimetres_(units_.size() > 1 ? where_hold(conditions_, Unit::millimetre) : Alternatives{}) {}

    void check() {
        if (rule_.linked) check_group();
        if (std::any_of(units_.begin(), units_.end(), [&](Unit u) { return possible(where(u)) == false; }))
            return; // told elsewhere
        for (std::size_t c = 0; c < rule_.limits.size(); ++c)
            if (rule_.limits[c].kind == Limit::Kind::value && is_maximum(rule_.compare) && check_limit(c))
                return; // of one class is enough to be told
    }

    /// A depth that is the whole wall of some coupons, and not of all.
    void check_thin_wall() {
        const bool pore = speaks_of_pores(rule_) &&
                          is_one_of(rule_.measure.lone_quantity(), {Quantity::size, Quantity::length});
        if (rule_.kind != Rule::Kind::each || !is_maximum(rule_.compare) ||
            (!pore && !goes_into_wall(rule_)) || doubts_.told("limit-over-wall", rule_.id))
            return;
        for (std::size_t c = 0; c < rule_.limits.size(); ++c) {
            const Limit &limit = rule_.limits[c];
            if (limit.kind != Limit::Kind::value || !over_thin_wall(limit.formula, pore)) continue;
            if (pore && held_by_another(c)) continue;
            if (pore)
                return tell("limit-over-wall",
                            "its limit for class " + set_.classes[c].id + ", '" + limit.text +
                                "', is more than the wall where that is as thin as the set covers: a pore "
                                "as large goes through it; a share of the wall beside it ('lesser of ... and "
                                "...') holds it there");
            return tell("limit-over-wall",
                        "its limit for class " + set_.classes[c].id + ", '" + limit.text +
                            "', is the whole wall or more where that is as thin as the set covers: " +
                            what_is_allowed(rule_) + " there");
        }
    }

private:
    void tell(std::string_view check, const std::string &text) {
        doubts_.tell(check, rule_.id, rule_.where_from, "rules." + rule_.id, text);
    }

    const Alternatives &where(Unit unit) const { return unit == Unit::inch ? in_inches_ : in_millimetres_; }

    bool check_limit(std::size_t c) {
        const Limit &limit = rule_.limits[c];
        const std::string said = "its limit for class " + set_.classes[c].id + ", '" + limit.text + "', ";
        if (rule_.kind == Rule::Kind::each && limit.formula.dimension() == Dimension::length) {
            if (goes_into_wall(rule_) && never_under_wall(limit.formula, false)) {
                tell("limit-over-wall", said + "is the whole wall or more: " + what_is_allowed(rule_));
                return true;
            }
            const auto slot = rule_.measure.lone_quantity();
            const bool pore = is_one_of(slot, {Quantity::size, Quantity::length}) && speaks_of_pores(rule_);
            if (pore && never_under_wall(limit.formula, true)) {
                tell("limit-over-wall", said + "is more than the thickest wall that the set covers");
                return true;
            }
            if ((pore || goes_into_wall(rule_)) && is_whole_share(limit.formula, pore)) {
                tell("limit-over-wall", said +
                                            "takes the whole of a thin wall, or more: is a '%' missing, or " +
                                            "the share turned round?");
                return true;
            }
        }
        const Window *window = rule_.window(c);
        if (rule_.kind != Rule::Kind::sum || !window || window->kind != Window::Kind::length ||
            limit.formula.dimension() != Dimension::length)
            return false;
        const auto reaches = [&](Unit u) {
            return may_be_over(where(u), limit.formula, window->length, u, false) == true;
        };
        const auto never_under = [&](Unit u) {
            return may_be_over(where(u), window->length, limit.formula, u, false) == false;
        };
        // Of lengths the window takes the part inside: such a rule never decides, and that is told.
        if (rule_.summed != Quantity::length && in_all(never_under)) {
            tell("limit-over-window", said + "is more than its window of " + window->text +
                                          ": one find as long as that is allowed");
            return true;
        }
        if (set_.scope.empty() || std::none_of(units_.begin(), units_.end(), reaches)) return false;
        tell("limit-over-window",
             said + "is its window of " + window->text +
                 " or more in some that the set covers: there it never rejects; does the "
                 "window grow with the wall?");
        return true;
    }

    void check_group() {
        if (rule_.least_group > most_in_a_row)
            return tell(
                "group-never-met",
                "a group of " + std::to_string(rule_.least_group) +
                    " in line is hardly ever found, so this hardly ever rejects: is the number right?");
        if (in_all([&](Unit u) { return possible(where_hold({*rule_.linked}, u)) == false; }))
            tell("group-never-met", "no two finds meet '" + rule_.linked->text +
                                        "', so there is no group and this never rejects");
    }

    template <class Asked>
    bool in_all(Asked asked) const {
        return std::all_of(units_.begin(), units_.end(), asked);
    }

    /// The wall, by any name, is never over the limit; or never even as much.
    bool never_under_wall(const Formula &limit, bool nor_equal) const {
        const auto under = [&](Quantity wall) {
            return in_all([&](Unit u) {
                return may_be_over(where(u), formula_of(wall), limit, u, !nor_equal) == false;
            });
        };
        return under(Quantity::thinner) || under(Quantity::thicker) || under(Quantity::weld_thickness);
    }

    /// Of a wall as thin as can be it is the wall itself, or so many times that: a share that holds nothing.
    bool is_whole_share(const Formula &limit, bool nor_equal) const {
        const auto of = limit.quantities();
        if (of.size() != 1 ||
            !is_one_of(of.front(), {Quantity::thinner, Quantity::thicker, Quantity::weld_thickness}))
            return false;
        const Slot wall = of.front();
        const Alternatives thin{{at_least_zero(Linear{{}, Exact(nm_per_mm / 1000)} - Linear::of(wall))}};
        return in_all([&](Unit unit) {
            const auto pieces = pieces_of(limit, unit);
            bool any = false;
            for (const auto &piece : pieces.value_or(std::vector<Piece>{})) {
                if (possible(both_of(thin, {piece.where})) == false) continue;
                const auto share = piece.value.factors.find(wall);
                if (share == piece.value.factors.end() || piece.value.constant != Exact(0) ||
                    share->second < Exact(1) || (nor_equal && share->second == Exact(1)))
                    return false;
                any = true;
            }
            return any;
        });
    }

    /// By one that speaks of all such pores, and of the wall.
    bool held_by_another(std::size_t c) const {
        return std::any_of(set_.rules.begin(), set_.rules.end(), [&](const Rule &other) {
            return other.kind == Rule::Kind::each && is_maximum(other.compare) && !other.only_with &&
                   is_one_of(other.measure.lone_quantity(), {Quantity::size, Quantity::length}) &&
                   other.when.empty() && other.where.empty() && other.shape == Shape::unknown &&
                   (rule_.subject.types & ~other.subject.types).none() &&
                   (rule_.subject.exams & ~other.subject.exams).none() &&
                   other.limits[c].kind == Limit::Kind::value &&
                   !over_thin_wall(other.limits[c].formula, true);
        });
    }

    /// The thinnest wall is not over the limit, or less than that, where scope or rule say how thin it may
    /// be.
    bool over_thin_wall(const Formula &limit, bool strictly) const {
        const auto of = limit.quantities();
        const auto is_wall = [](Slot slot) {
            return is_one_of(slot, {Quantity::thinner, Quantity::thicker, Quantity::weld_thickness});
        };
        if (!std::all_of(of.begin(), of.end(), is_wall)) return false; // it hangs on what may be anything
        const auto over = [&](Quantity wall) {
            for (const Slot slot : of) // another one may be anything beside it
                if (slot != slot_of(wall)) return false;
            const Formula nearly_none = Formula::constant(Exact(nm_per_mm / 1000), Dimension::length);
            return in_all([&](Unit u) {
                return may_be_over(where(u), nearly_none, formula_of(wall), u, false) == false &&
                       may_be_over(where(u), limit, formula_of(wall), u, strictly) == true;
            });
        };
        return over(Quantity::thinner) || over(Quantity::thicker) || over(Quantity::weld_thickness);
    }

    const CriteriaSet &set_;
    const Rule &rule_;
    Doubts &doubts_;
    std::vector<Condition> conditions_;
    std::vector<Unit> units_;
    Alternatives in_inches_, in_millimetres_; ///< where the conditions hold
};

/// Measures of which an imperfection has the more, the worse it is.
constexpr std::initializer_list<Quantity> extents{Quantity::length, Quantity::width, Quantity::depth,
                                                  Quantity::height, Quantity::size,  Quantity::area};

/// An imperfection, and no dimension that is checked.
bool speaks_of_imperfections(const Rule &rule) {
    const Vocabulary &words = Vocabulary::shipped();
    for (std::size_t t = 0; t < words.size(); ++t)
        if (rule.subject.types[t] && !words[static_cast<TypeId>(t)].measured) return true;
    return false;
}

bool speaks_of_fillets(const Rule &rule) { return only_of(rule.subject.types, {"fillet size", "throat"}); }

/// Below it the tolerance alone may be half of the size (AWS D1.1, undersize); common practice, no source.
constexpr std::int64_t least_fillet_nm = 5 * nm_per_mm;

/// Smaller than half of what the drawing asks for: `lesser of` where `greater of` was meant, or a decimal
/// point.
void check_fillet(const CriteriaSet &set, const Rule &rule, Doubts &doubts) {
    if (rule.kind != Rule::Kind::each || is_maximum(rule.compare) || !speaks_of_fillets(rule)) return;
    const Slot specified = slot_of(Quantity::fillet_size);
    const Formula half =
        Formula::combine(Formula::Op::multiply, Formula::constant(Exact(1) / Exact(2), Dimension::number),
                         formula_of(Quantity::fillet_size), Dimension::length);
    std::vector<Condition> holding = conditions_of(set, rule);
    // No wall asks for a smaller one: a fillet may be held by the thickness of its members.
    const Formula least = Formula::constant(Exact(least_fillet_nm), Dimension::length);
    for (const auto &[larger, of] : {std::pair{Quantity::fillet_size, least},
                                     {Quantity::thinner, formula_of(Quantity::fillet_size)},
                                     {Quantity::weld_thickness, formula_of(Quantity::fillet_size)}}) {
        Condition one;
        one.left = formula_of(larger);
        one.edges = {{Compare::at_least, of}};
        holding.push_back(one);
    }
    for (std::size_t c = 0; c < rule.limits.size(); ++c) {
        const Limit &limit = rule.limits[c];
        if (limit.kind != Limit::Kind::value || !limit.formula.uses(specified)) continue;
        const auto units = units_to_try(set, rule);
        const bool less = std::any_of(units.begin(), units.end(), [&](Unit unit) {
            return may_be_over(where_hold(holding, unit), half, limit.formula, unit) == true;
        });
        if (less)
            return doubts.tell(
                "fillet-under-size", rule.id, rule.where_from, "rules." + rule.id,
                "its least for class " + set.classes[c].id + ", '" + limit.text +
                    "', may be less than half of the specified size: is 'greater of' meant, or "
                    "another number?");
    }
}

/// Some rule asks how small a fillet may be.
bool has_minimum(const CriteriaSet &set) {
    return std::any_of(set.rules.begin(), set.rules.end(), [&](const Rule &rule) {
        return rule.kind == Rule::Kind::each && !is_maximum(rule.compare) && speaks_of_fillets(rule);
    });
}

/// "The small ones are forbidden, the large ones are not"; the word for that side, or empty.
std::string wrong_side_of(const CriteriaSet &set, const Rule &rule) {
    if (rule.kind == Rule::Kind::presence && speaks_of_imperfections(rule) &&
        std::any_of(rule.limits.begin(), rule.limits.end(),
                    [](const Limit &l) { return l.kind == Limit::Kind::none; })) {
        const auto held = [&](bool upper) {
            return std::any_of(rule.where.begin(), rule.where.end(), [&](const Condition &c) {
                return c.kind == Condition::Kind::comparison && is_one_of(c.left.lone_quantity(), extents) &&
                       std::any_of(c.edges.begin(), c.edges.end(),
                                   [&](const auto &edge) { return is_maximum(edge.compare) == upper; });
            });
        };
        return held(true) && !held(false) ? "small" : "";
    }
    const auto slot = rule.measure.lone_quantity();
    if (rule.kind != Rule::Kind::each || !slot ||
        std::none_of(rule.limits.begin(), rule.limits.end(),
                     [](const Limit &l) { return l.kind == Limit::Kind::value; }))
        return "";
    const bool maximum = is_maximum(rule.compare);
    if (is_one_of(slot, extents) && speaks_of_imperfections(rule)) return maximum ? "" : "small";
    if (slot == slot_of(Quantity::size) && speaks_of_fillets(rule))
        return maximum && !has_minimum(set) ? "large" : "";
    if (is_way_to_nearest(slot)) return maximum ? "far" : "";
    if (slot != slot_of(Quantity::angle)) return "";
    // Through the air: the flatter, the wider.
    if (only_of(rule.subject.types, {"incorrect weld toe"})) return maximum ? "wide" : "";
    return only_of(rule.subject.types, {"angular misalignment"}) && !maximum ? "small" : "";
}

/// A limit on the side on which nobody is harmed: `at least` for `at most`.
void check_side(const CriteriaSet &set, const Rule &rule, Doubts &doubts) {
    const std::string side = wrong_side_of(set, rule);
    if (!side.empty())
        doubts.tell("limit-turned-round", rule.id, rule.where_from, "rules." + rule.id,
                    "it rejects what is too " + side + ", and what is worse passes: is '" +
                        (rule.kind == Rule::Kind::presence ? "where" : std::string(name_of(rule.compare))) +
                        "' turned round?");
}

/// `length over 300 x width`: a crack would be rounded, or a pore linear.
void check_linear(const CriteriaSet &set, Doubts &doubts) {
    if (!set.linear) return;
    const auto times_as_long = [](Compare compare, std::int64_t times) {
        Condition out;
        out.left = formula_of(Quantity::length);
        out.edges = {{compare, Formula::combine(Formula::Op::multiply,
                                                Formula::constant(Exact(times), Dimension::number),
                                                formula_of(Quantity::width), Dimension::length)}};
        return out;
    };
    const auto tell = [&](const std::string &text) {
        doubts.tell("linear-beyond-belief", "linear", set.linear_where, "linear", text);
    };
    if (remainder_of(set, {times_as_long(Compare::at_least, longest_rounded)}, {{*set.linear}}))
        tell("what is " + std::to_string(longest_rounded) + " times as long as wide would be rounded");
    else if (remainder_of(set, {*set.linear, times_as_long(Compare::at_most, 1)}, {}))
        tell("what is no longer than wide would be linear");
}

/// A row of a table by a thickness, and where it begins.
struct RowFrom {
    Exact from;
    const Table::Row *row;
};

std::vector<RowFrom> rows_in_order(const Table &table) {
    std::vector<RowFrom> out;
    for (const auto &row : table.rows) {
        if (row.band.empty()) return {};
        RowFrom one{row.band.front().value, &row};
        for (const auto &edge : row.band) one.from = std::min(one.from, edge.value);
        // A row that is open below begins before the one that begins where it ends.
        if (row.band.size() == 1 && is_maximum(row.band.front().compare)) one.from = Exact(0);
        out.push_back(one);
    }
    std::stable_sort(out.begin(), out.end(),
                     [](const RowFrom &a, const RowFrom &b) { return a.from < b.from; });
    return out;
}

/// Rows by a thickness, of which a thicker wall has the smaller value.
void check_falling(const Table &table, Doubts &doubts) {
    const auto by = table.by.lone_quantity();
    if (!is_one_of(by, {Quantity::thinner, Quantity::thicker, Quantity::weld_thickness})) return;
    const auto rows = rows_in_order(table);
    for (std::size_t i = 1; i < rows.size(); ++i) {
        const Formula &above = rows[i].row->value, &below = rows[i - 1].row->value;
        if (jumps_at(rows[i].from, *by, below, above, most_jump))
            return doubts.tell("table-jumps", table.name, table.where, "tables." + table.name,
                               "'" + rows[i].row->text + "' has more than " + std::to_string(most_jump) +
                                   " times what '" + rows[i - 1].row->text +
                                   "' has where the two meet: is the number right?");
        if (falls_at(rows[i].from, *by, below, above, Unit::inch) &&
            falls_at(rows[i].from, *by, below, above, Unit::millimetre))
            return doubts.tell("table-falls", table.name, table.where, "tables." + table.name,
                               "'" + rows[i].row->text + "' has less than '" + rows[i - 1].row->text +
                                   "': is a thicker wall meant to have the smaller number?");
    }
}

} // namespace

void check_thin_walls(const CriteriaSet &set, Doubts &doubts) {
    for (std::size_t r = 0; r < set.rules.size(); ++r) {
        const bool alone =
            !set.rules[r].only_with && std::none_of(set.rules.begin(), set.rules.end(),
                                                    [&](const Rule &other) { return other.only_with == r; });
        if (alone) Belief(set, set.rules[r], doubts).check_thin_wall(); // else another one holds it too
    }
}

void check_belief(const CriteriaSet &set, Doubts &doubts) {
    check_linear(set, doubts);
    for (const auto &rule : set.rules) {
        Belief(set, rule, doubts).check();
        check_side(set, rule, doubts);
        check_fillet(set, rule, doubts);
    }
    for (const auto &table : set.tables)
        if (std::none_of(set.unused.begin(), set.unused.end(),
                         [&](const UnusedName &one) { return one.name == table->name; }))
            check_falling(*table, doubts);
}

} // namespace beadbook
