// Limits that nobody would let stand, whatever the wall: a slip of the unit or of the decimal point.
#include "criteria/doubts.hpp"
#include "criteria/limit_order.hpp"
#include "criteria/vocabulary.hpp"
#include "measure/print.hpp"

#include <algorithm>
#include <optional>

namespace beadbook {
namespace {

/// How much of what anybody allows; common practice, no source. What shipped sets allow lies well within.
struct BelievedLimit {
    std::initializer_list<const char *> types; ///< with their kinds; none: every imperfection
    std::initializer_list<Quantity> measures;
    bool upper = true; ///< else it asks for at least as much
    std::int64_t value = 0;
    bool or_rounded = false; ///< or whatever is rounded by the rule's own word
    bool in_all = false;     ///< told where all classes have so much
};
constexpr std::int64_t micro_deg = 1'000'000;
/// A scope that names more has no end there.
constexpr std::int64_t thickest_nm = 1000 * nm_per_mm;
const BelievedLimit believed_limits[] = {
    {{"excess weld metal", "excessive convexity", "excess penetration", "linear misalignment"},
     {Quantity::height},
     true,
     20 * nm_per_mm},
    {{"angular misalignment"}, {Quantity::angle}, true, 15 * micro_deg},
    {{"incorrect weld toe"}, {Quantity::angle}, false, 45 * micro_deg},
    {{"undercut"}, {Quantity::depth}, true, 5 * nm_per_mm},
    {{"porosity", "rounded indication"}, {Quantity::size, Quantity::width}, true, 26 * nm_per_mm, true, true},
    {{"porosity", "rounded indication"}, {Quantity::size, Quantity::width}, true, 50 * nm_per_mm, true},
    {{"linear indication"}, {Quantity::length, Quantity::size}, true, 26 * nm_per_mm},
    {{}, {Quantity::length, Quantity::size}, true, 500 * nm_per_mm},
};

bool speaks_of_such_only(const Rule &rule, const BelievedLimit &one) {
    const Vocabulary &words = Vocabulary::shipped();
    if (one.or_rounded && rule.shape == Shape::rounded) return true;
    for (std::size_t t = 0; t < words.size(); ++t) {
        if (!rule.subject.types[t]) continue;
        const auto type = static_cast<TypeId>(t);
        const bool such = one.types.size() == 0
                              ? !words[type].measured
                              : std::any_of(one.types.begin(), one.types.end(), [&](const char *name) {
                                    return words.is_a(type, *words.find(name));
                                });
        if (!such) return false;
    }
    return true;
}

/// Where a rule speaks, in each unit that is to be looked at.
struct Places {
    std::vector<std::pair<Unit, Alternatives>> all;
    bool some = true; ///< it does somewhere, in each of them

    Places(const CriteriaSet &set, const Rule &rule) {
        const auto conditions = conditions_of(set, rule);
        for (const Unit unit : units_to_try(set, rule)) {
            all.emplace_back(unit, where_hold(conditions, unit));
            some = some && possible(all.back().second) == true;
        }
    }
};

/// Beyond it wherever the rule speaks.
bool always_beyond(const Places &places, const Formula &limit, const BelievedLimit &one) {
    if (limit.is_constant() &&
        (one.upper ? limit.constant_value() <= Exact(one.value) : limit.constant_value() >= Exact(one.value)))
        return false;
    const Formula bound = Formula::constant(Exact(one.value), limit.dimension());
    return places.some && std::all_of(places.all.begin(), places.all.end(), [&](const auto &place) {
               const auto &[unit, where] = place;
               return (one.upper ? may_be_over(where, bound, limit, unit, false)
                                 : may_be_over(where, limit, bound, unit, false)) == false;
           });
}

/// Beyond it where the wall is as thick as the set covers, though not where it is thin: a share of the wall
/// that no number holds.
bool beyond_when_thick(const Places &places, const Formula &limit, const BelievedLimit &one) {
    if (!one.upper || one.or_rounded || limit.is_constant()) return false;
    const Formula bound = Formula::constant(Exact(one.value), limit.dimension());
    const Formula far = Formula::constant(Exact(thickest_nm), Dimension::length);
    return std::all_of(places.all.begin(), places.all.end(), [&](const auto &place) {
        const Unit unit = place.first;
        const Alternatives &where = place.second;
        const auto ends = [&](Quantity wall) {
            return limit.uses(slot_of(wall)) && may_be_over(where, formula_of(wall), far, unit) == false;
        };
        return (ends(Quantity::thinner) || ends(Quantity::thicker) || ends(Quantity::weld_thickness)) &&
               may_be_over(where, limit, bound, unit) == true;
    });
}

bool all_beyond(const Places &places, const Rule &rule, const BelievedLimit &one) {
    return std::all_of(rule.limits.begin(), rule.limits.end(), [&](const Limit &limit) {
        return limit.kind != Limit::Kind::value || always_beyond(places, limit.formula, one);
    });
}

/// That tells a slip in one class better.
bool far_apart(const Rule &rule) {
    for (std::size_t c = 1; c < rule.limits.size(); ++c)
        if (!times_apart(rule.limits[c - 1], rule.limits[c]).empty()) return true;
    return false;
}

/// `where: length over 1000 in`: nothing that is found is as large.
void check_where(const CriteriaSet &set, const Rule &rule, Doubts &doubts) {
    constexpr std::int64_t largest_find = 500 * nm_per_mm;
    for (const auto &c : rule.where)
        for (const auto &edge : c.edges)
            if (c.kind == Condition::Kind::comparison && !is_maximum(edge.compare) &&
                is_one_of(c.left.lone_quantity(), {Quantity::length, Quantity::size, Quantity::width,
                                                   Quantity::depth, Quantity::height}) &&
                edge.right.is_constant() && edge.right.constant_value() >= Exact(largest_find))
                return doubts.tell("limit-beyond-belief", rule.id, rule.where_from, "rules." + rule.id,
                                   "'" + c.text + "' is more than " +
                                       print(Exact(largest_find), Dimension::length, set.unit) +
                                       ", and nothing that is found is so large: are the unit and the "
                                       "decimal point right?");
}

/// The first of its limits that is beyond what is believed of such ones.
void check_limits(const CriteriaSet &set, const Rule &rule, Doubts &doubts) {
    std::optional<Places> places; // of a rule of which something is believed
    for (const auto &one : believed_limits) {
        if (rule.kind != Rule::Kind::each || is_maximum(rule.compare) != one.upper ||
            !is_one_of(rule.measure.lone_quantity(), one.measures) || !speaks_of_such_only(rule, one))
            continue;
        if (!places) places.emplace(set, rule);
        if (one.in_all && !all_beyond(*places, rule, one)) continue;
        for (std::size_t c = 0; c < set.classes.size(); ++c) {
            const Limit &limit = rule.limits[c];
            if (limit.kind != Limit::Kind::value) continue;
            const bool always = always_beyond(*places, limit.formula, one);
            if (!always &&
                (doubts.told("limit-over-wall", rule.id) || !beyond_when_thick(*places, limit.formula, one)))
                continue;
            if (one.or_rounded && far_apart(rule)) break;
            return doubts.tell("limit-beyond-belief", rule.id, rule.where_from, "rules." + rule.id,
                               "its limit for class " + set.classes[c].id + ", '" + limit.text + "', is " +
                                   (one.upper ? "more" : "less") + " than " +
                                   print(Exact(one.value), rule.dimension(), set.unit) +
                                   (always ? "" : " where the wall is as thick as the set covers") +
                                   ", and nobody lets so " + (one.upper ? "much" : "little") + " stand: " +
                                   (always
                                        ? "are the unit and the decimal point right?"
                                        : "is a number missing beside the share ('lesser of ... and ...')?"));
        }
    }
}

} // namespace

void check_limit_belief(const CriteriaSet &set, Doubts &doubts) {
    for (const auto &rule : set.rules) check_where(set, rule, doubts);
    for (const auto &rule : set.rules) check_limits(set, rule, doubts);
}

} // namespace beadbook
