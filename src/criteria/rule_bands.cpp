// What conditions let through, as far as they compare one quantity with plain numbers or ask for words.
#include "criteria/limit_order.hpp"
#include "criteria/scoped_rule.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Of two that hold something each. Every pair of rules is asked, so nothing is copied.
bool meet(const RuleScope &a, const RuleScope &b) {
    for (const auto &[slot, band] : b.bands)
        if (const auto own = a.bands.find(slot); own != a.bands.end() && own->second.within(band).empty())
            return false;
    return std::none_of(b.words.begin(), b.words.end(), [&](const auto &one) {
        const auto own = a.words.find(one.first);
        return own != a.words.end() && (own->second & one.second) == 0;
    });
}

/// Also if they are written in other words: 1/16 in and 0.0625 in.
bool same_limits(const CriteriaSet &set, const Rule &a, const Rule &b) {
    const auto units = units_to_try(set, a);
    const auto none_over = [&](const Limit &x, const Limit &y) {
        return lets_more_through(x, y, a.compare, {}, units) == false;
    };
    return std::equal(a.limits.begin(), a.limits.end(), b.limits.begin(), b.limits.end(),
                      [&](const Limit &x, const Limit &y) {
                          if (x.kind != y.kind) return false;
                          return x.text == y.text ||
                                 (x.kind == Limit::Kind::value && none_over(x, y) && none_over(y, x));
                      });
}

/// `not said` keeps open what the other rule lets through: is it meant, or does the rule not apply?
void check_silent_beside(const CriteriaSet &set, const ScopedRule &a, const ScopedRule &b, Doubts &doubts) {
    for (std::size_t c = 0; c < set.classes.size(); ++c)
        for (const auto &[silent, free] : {std::pair{a.rule, b.rule}, {b.rule, a.rule}})
            if (silent->limits[c].kind == Limit::Kind::not_said && free->limits[c].kind == Limit::Kind::free)
                return doubts.tell(
                    "not-said-beside-no-limit", silent->id, silent->where_from, "rules." + silent->id,
                    "class " + set.classes[c].id + " is 'not said' here, and rule '" + free->id +
                        "' has 'no limit' for the same: it stays open; 'does not apply' says " +
                        "that this rule is not for the class");
}

void check_pair(const CriteriaSet &set, const ScopedRule &a, const ScopedRule &b, Doubts &doubts) {
    const Subject &x = a.rule->subject, &y = b.rule->subject;
    if (a.measure != b.measure || a.scope.others != b.scope.others) return;
    const std::string path = "rules." + b.rule->id;
    const bool same = same_limits(set, *a.rule, *b.rule);
    if (same && a.scope == b.scope && x.types == y.types && x.exams == y.exams)
        return doubts.tell("duplicate-rule", b.rule->id, b.rule->where_from, path,
                           "it says what rule '" + a.rule->id + "' says");
    if (same) return;
    for (const auto &[slot, band] : a.scope.bands) {
        const auto other = b.scope.bands.find(slot);
        if (other == b.scope.bands.end() || other->second == band) continue;
        return doubts.tell("overlapping-bands", b.rule->id, b.rule->where_from, path,
                           "its band of " + std::string(info(static_cast<Quantity>(slot)).name) +
                               " overlaps that of rule '" + a.rule->id + "', and their limits differ");
    }
}

/// Whether all that `b` speaks of is spoken of by `a` too.
bool speaks_of_all(const ScopedRule &a, const ScopedRule &b) {
    const Subject &x = a.rule->subject, &y = b.rule->subject;
    const bool shape = a.rule->shape == Shape::unknown || a.rule->shape == b.rule->shape;
    if (!shape || (y.types & ~x.types).any() || (y.exams & ~x.exams).any()) return false;
    const auto among = [&](const std::string &text) {
        return std::find(b.scope.others.begin(), b.scope.others.end(), text) != b.scope.others.end();
    };
    return std::all_of(a.scope.others.begin(), a.scope.others.end(), among) &&
           std::all_of(a.scope.bands.begin(), a.scope.bands.end(),
                       [&](const auto &one) {
                           const auto own = b.scope.bands.find(one.first);
                           return own != b.scope.bands.end() && own->second.within(one.second) == own->second;
                       }) &&
           std::all_of(a.scope.words.begin(), a.scope.words.end(), [&](const auto &one) {
               const auto own = b.scope.words.find(one.first);
               return own != b.scope.words.end() && (own->second & ~one.second) == 0;
           });
}

/// A rule that can never tell, because another one rejects all that it would, and perhaps more.
void check_shadow(const CriteriaSet &set, const ScopedRule &a, const ScopedRule &b, Doubts &doubts) {
    for (const auto &[over, under] : {std::pair{&a, &b}, {&b, &a}}) {
        const Rule &strict = *over->rule, &loose = *under->rule;
        if (strict.only_with || loose.only_with || loose.must_be_measured || !speaks_of_all(*over, *under))
            continue;
        const bool forbids = strict.kind == Rule::Kind::presence;
        if (!forbids && over->measure != under->measure) continue;
        if (over->scope == under->scope && same_limits(set, strict, loose) && !forbids) continue;
        const auto units = units_to_try(set, strict);
        bool decides = false, limits = false;
        for (std::size_t c = 0; c < set.classes.size(); ++c) {
            const Limit &x = strict.limits[c], &y = loose.limits[c];
            if (y.kind == Limit::Kind::other) continue;
            const bool none = x.kind == Limit::Kind::none;
            const bool within =
                x.kind == Limit::Kind::value && y.kind == Limit::Kind::value &&
                lets_more_through(x, y, strict.compare, conditions_of(set, loose), units) == false;
            decides = decides || !(none || within);
            limits = limits || y.kind == Limit::Kind::value;
        }
        if (!decides && limits)
            return doubts.tell("shadowed-rule", loose.id, loose.where_from, "rules." + loose.id,
                               "it never decides: rule '" + strict.id +
                                   "' speaks of the same finds and lets no more through");
    }
    const Rule &x = *a.rule, &y = *b.rule;
    if (x.only_with || y.only_with || a.measure != b.measure || a.scope != b.scope ||
        x.subject.types != y.subject.types || x.subject.exams != y.subject.exams || same_limits(set, x, y))
        return;
    for (std::size_t c = 0; c < set.classes.size(); ++c)
        if (x.limits[c].kind == Limit::Kind::value && y.limits[c].kind == Limit::Kind::value)
            return doubts.tell("two-limits", y.id, y.where_from, "rules." + y.id,
                               "rule '" + x.id +
                                   "' has another limit for the same finds; the stricter of them decides");
}

/// It speaks only of what is deeper, or longer, than another one allows.
void check_beyond_limit(const CriteriaSet &set, const ScopedRule &limit, const ScopedRule &one,
                        Doubts &doubts) {
    const Rule &strict = *limit.rule, &idle = *one.rule;
    const auto measure = strict.measure.lone_quantity();
    if (strict.kind != Rule::Kind::each || !measure || !is_maximum(strict.compare) || strict.only_with ||
        idle.only_with || idle.must_be_measured || !one.scope.bands.contains(*measure) ||
        !one.scope.bands.at(*measure).low || !speaks_of_all(limit, one))
        return;
    const auto conditions = conditions_of(set, idle);
    const auto units = units_to_try(set, strict);
    const bool itself = strict.compare == Compare::at_most; // what measures as much passes
    bool any = false;
    for (std::size_t c = 0; c < set.classes.size(); ++c) {
        if (idle.limits[c].kind == Limit::Kind::other) continue;
        any = any || idle.limits[c].kind == Limit::Kind::value;
        if (strict.limits[c].kind != Limit::Kind::value) return;
        for (const Unit unit : units) {
            const auto where = where_hold(conditions, unit);
            if (possible(where) != true ||
                may_be_over(where, strict.limits[c].formula, formula_of(static_cast<Quantity>(*measure)),
                            unit, !itself) != false)
                return;
        }
    }
    if (any)
        doubts.tell("shadowed-rule", idle.id, idle.where_from, "rules." + idle.id,
                    "it never decides: it speaks only of what rule '" + strict.id +
                        "' rejects; what that lets through is not held by it");
}

/// What one find may measure, beside what all in a stretch may together: the sum holds a lone one too.
void check_sum_beside(const CriteriaSet &set, const ScopedRule &sum, const ScopedRule &one, Doubts &doubts) {
    const Rule &strict = *sum.rule, &loose = *one.rule;
    if (strict.kind != Rule::Kind::sum || loose.kind != Rule::Kind::each ||
        loose.measure.lone_quantity() != slot_of(strict.summed) || strict.compare != loose.compare ||
        strict.only_with || loose.only_with || loose.must_be_measured || strict.least_group > 1 ||
        !speaks_of_all(sum, one))
        return;
    const auto conditions = conditions_of(set, loose);
    const auto units = units_to_try(set, strict);
    bool decides = false, limits = false;
    for (std::size_t c = 0; c < set.classes.size(); ++c) {
        const Limit &x = strict.limits[c], &y = loose.limits[c];
        if (y.kind == Limit::Kind::other) continue;
        limits = limits || y.kind == Limit::Kind::value;
        const Window *window = strict.window(c);
        // Of a length the part inside counts, so the stretch must be longer than the limit.
        const auto fits = [&](Unit unit) {
            return strict.summed != Quantity::length || !window || window->kind != Window::Kind::length ||
                   may_be_over(where_hold(conditions, unit), x.formula, window->length, unit, false) == false;
        };
        decides = decides || x.kind != Limit::Kind::value || y.kind != Limit::Kind::value ||
                  lets_more_through(x, y, strict.compare, conditions, units) != false ||
                  !std::all_of(units.begin(), units.end(), fits);
    }
    if (!decides && limits)
        doubts.tell("shadowed-rule", loose.id, loose.where_from, "rules." + loose.id,
                    "it never decides: rule '" + strict.id + "' allows all of them together no more");
}

/// At most so much by one and at least so much by the other, and nothing is both.
void check_between(const CriteriaSet &set, const ScopedRule &a, const ScopedRule &b, Doubts &doubts) {
    const bool maximum = is_maximum(a.rule->compare);
    const Rule &most = maximum ? *a.rule : *b.rule, &least = maximum ? *b.rule : *a.rule;
    if (is_maximum(least.compare) || !is_maximum(most.compare) || most.kind != Rule::Kind::each ||
        least.kind != Rule::Kind::each || most.only_with || least.only_with ||
        !a.rule->measure.lone_quantity() ||
        a.rule->measure.lone_quantity() != b.rule->measure.lone_quantity())
        return;
    std::vector<Condition> both = conditions_of(set, most);
    for (const auto *list : {&least.when, &least.where}) both.insert(both.end(), list->begin(), list->end());
    std::vector<Unit> units = units_to_try(set, most);
    if (units.size() == 1) units = units_to_try(set, least);
    const bool itself = most.compare == Compare::at_most && least.compare == Compare::at_least;
    for (std::size_t c = 0; c < set.classes.size(); ++c) {
        const Limit &x = most.limits[c], &y = least.limits[c];
        if (x.kind != Limit::Kind::value || y.kind != Limit::Kind::value) continue;
        const bool apart = std::all_of(units.begin(), units.end(), [&](Unit unit) {
            const auto where = where_hold(both, unit);
            return possible(where) != false &&
                   may_be_over(where, x.formula, y.formula, unit, !itself) == false;
        });
        if (apart)
            return doubts.tell("always-rejects", b.rule->id, b.rule->where_from, "rules." + b.rule->id,
                               "with rule '" + a.rule->id + "' it always rejects for class " +
                                   set.classes[c].id + ": nothing is " + std::string(name_of(most.compare)) +
                                   " " + x.text + " and " + std::string(name_of(least.compare)) + " " +
                                   y.text);
    }
}

} // namespace

void check_rule_bands(const CriteriaSet &set, Doubts &doubts) {
    std::vector<ScopedRule> known = scoped_rules(set);
    for (auto &one : known) one.empty = one.empty || doubts.told("never-together", one.rule->id);
    for (std::size_t b = 1; b < known.size(); ++b)
        for (std::size_t a = 0; a < b; ++a) {
            const Subject &x = known[a].rule->subject, &y = known[b].rule->subject;
            if ((x.types & y.types).none() || (x.exams & y.exams).none() || known[a].empty ||
                known[b].empty || !meet(known[a].scope, known[b].scope))
                continue;
            check_pair(set, known[a], known[b], doubts);
            check_shadow(set, known[a], known[b], doubts);
            check_silent_beside(set, known[a], known[b], doubts);
            check_between(set, known[a], known[b], doubts);
            check_sum_beside(set, known[a], known[b], doubts);
            check_sum_beside(set, known[b], known[a], doubts);
            check_beyond_limit(set, known[a], known[b], doubts);
            check_beyond_limit(set, known[b], known[a], doubts);
        }
    check_rows_of_bands(set, known, doubts);
}

} // namespace beadbook
