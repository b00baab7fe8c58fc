// Stretches of a weld in which something is added or counted, and groups in line: too short, or the only
// thing that is held.
#include "criteria/doubts.hpp"
#include "criteria/limit_order.hpp"
#include "measure/print.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Nobody adds up what lies in less of a weld. Common practice, no source; what shipped sets name is longer.
constexpr std::int64_t least_window_nm = 3 * nm_per_mm;

/// More of a stretch no standard lets be filled. Common practice, no source; what shipped sets allow lies
/// within.
const Exact most_filled = Exact(2) / Exact(3);

bool speak_of_the_same(const Rule &a, const Rule &b) {
    return (a.subject.types & b.subject.types).any() && (a.subject.exams & b.subject.exams).any() &&
           (a.shape == Shape::unknown || b.shape == Shape::unknown || a.shape == b.shape);
}

class Windows {
public:
    Windows(const CriteriaSet &set, Doubts &doubts) : set_(set), doubts_(doubts) {}

    void check() {
        for (const auto &rule : set_.rules)
            for (std::size_t c = 0; c < rule.windows.size(); ++c)
                if (check_share(rule, c) || check_area(rule, c)) break;
        for (const auto &rule : set_.rules)
            for (std::size_t c = 0; c < rule.windows.size(); ++c)
                if (rule.limits[c].kind == Limit::Kind::value &&
                    rule.windows[c].kind == Window::Kind::length && check_window(rule, c))
                    break; // of one class is enough to be told
    }

private:
    /// Lengths that may fill most of the stretch: hardly anything is rejected.
    bool check_share(const Rule &rule, std::size_t c) {
        const Window &window = rule.windows[c];
        if (rule.kind != Rule::Kind::sum || rule.summed != Quantity::length ||
            window.kind == Window::Kind::area || rule.limits[c].kind != Limit::Kind::value ||
            doubts_.told("never-decisive", rule.id) || doubts_.told("limit-over-window", rule.id))
            return false;
        const Formula stretch =
            window.kind == Window::Kind::length ? window.length : formula_of(Quantity::weld_length);
        const Formula most =
            Formula::combine(Formula::Op::multiply, Formula::constant(most_filled, Dimension::number),
                             stretch, Dimension::length);
        if (!never_over(rule, nullptr, most, rule.limits[c].formula)) return false;
        return tell("limit-over-window", rule,
                    "its limit for class " + set_.classes[c].id + ", '" + rule.limits[c].text +
                        "', is always most of its window, " + window.text +
                        ": hardly anything is rejected; are both numbers right?");
    }

    /// Areas that may fill most of the stretch times the wall, or the width, of which they are a share: a
    /// forgotten "%".
    bool check_area(const Rule &rule, std::size_t c) {
        const Window &window = rule.windows[c];
        const Limit &limit = rule.limits[c];
        if (rule.kind != Rule::Kind::sum || rule.summed != Quantity::area || limit.kind != Limit::Kind::value)
            return false;
        std::vector<Formula> areas;
        if (window.kind == Window::Kind::area)
            areas.push_back(Formula::constant(window.area, Dimension::area));
        else if (window.kind == Window::Kind::length)
            for (const Quantity across : {Quantity::thinner, Quantity::thicker, Quantity::weld_thickness,
                                          Quantity::bead_thickness, Quantity::weld_width, Quantity::throat})
                if (limit.formula.uses(slot_of(across)))
                    areas.push_back(Formula::combine(Formula::Op::multiply, window.length, formula_of(across),
                                                     Dimension::area));
        for (const Formula &area : areas) {
            const Formula most =
                Formula::combine(Formula::Op::multiply, Formula::constant(most_filled, Dimension::number),
                                 area, Dimension::area);
            if (never_over(rule, nullptr, most, limit.formula))
                return tell("limit-over-window", rule,
                            "its limit for class " + set_.classes[c].id + ", '" + limit.text +
                                "', is always most of the area of its window, " + window.text +
                                ": hardly anything is rejected; is a '%' missing?");
        }
        return false;
    }

    bool check_window(const Rule &rule, std::size_t c) {
        if (doubts_.told("negative-limit", rule.id)) return false;
        const Window &window = rule.windows[c];
        const std::string said = "its window" +
                                 (rule.window_by_class ? " for class " + set_.classes[c].id : "") + ", " +
                                 window.text + ", ";
        if (never_over(rule, nullptr, window.length,
                       Formula::constant(Exact(least_window_nm), Dimension::length)))
            return tell("window-too-short", rule,
                        said + "is no more than " +
                            print(Exact(least_window_nm), Dimension::length, Unit::millimetre) +
                            ", and nobody looks at so little of a weld: are the unit and the decimal "
                            "point right?");
        for (const Quantity wall : {Quantity::thinner, Quantity::thicker, Quantity::weld_thickness})
            if (window.length.uses(slot_of(wall)) &&
                never_over(rule, nullptr, window.length, formula_of(wall)))
                return tell("window-too-short", rule,
                            said + "is no longer than the wall is thick: is the number right?");
        for (const Quantity extent : {Quantity::length, Quantity::size})
            if (never_over(rule, nullptr, window.length, formula_of(extent)))
                return tell("window-too-short", rule, said + "is shorter than any one that it speaks of");
        for (const auto &other : set_.rules) {
            const Limit &limit = other.limits[c];
            if (other.kind != Rule::Kind::each || !is_maximum(other.compare) || other.only_with ||
                limit.kind != Limit::Kind::value || limit.formula.dimension() != Dimension::length ||
                !is_one_of(other.measure.lone_quantity(), {Quantity::length, Quantity::size}) ||
                !speak_of_the_same(rule, other) || doubts_.told("shadowed-rule", other.id) ||
                doubts_.told("limits-far-apart", other.id) || doubts_.told("limit-beyond-belief", other.id) ||
                !never_over(rule, &other, window.length, limit.formula))
                continue;
            return tell("window-too-short", rule,
                        said + "is no longer than one find may be, '" + limit.text + "' by rule '" +
                            other.id + "': is it meant so?");
        }
        return false;
    }

    bool tell(std::string_view check, const Rule &rule, const std::string &text) {
        doubts_.tell(check, rule.id, rule.where_from, "rules." + rule.id, text);
        return true;
    }

    /// Nowhere that the rule, and the other one with it, speaks of; and they do somewhere.
    bool never_over(const Rule &rule, const Rule *other, const Formula &one, const Formula &limit) const {
        std::vector<Condition> asked = conditions_of(set_, rule);
        if (other) {
            asked.insert(asked.end(), other->when.begin(), other->when.end());
            asked.insert(asked.end(), other->where.begin(), other->where.end());
        }
        const auto units = units_to_try(set_, rule);
        return std::all_of(units.begin(), units.end(), [&](Unit unit) {
            const auto where = where_hold(asked, unit);
            const Formula nothing = Formula::constant(Exact(0), Dimension::length);
            return possible(where) == true && may_be_over(where, one, nothing, unit) == true &&
                   may_be_over(where, limit, nothing, unit) == true &&
                   may_be_over(where, one, limit, unit) == false;
        });
    }

    const CriteriaSet &set_;
    Doubts &doubts_;
};

} // namespace

void check_windows(const CriteriaSet &set, Doubts &doubts) { Windows(set, doubts).check(); }

} // namespace beadbook
