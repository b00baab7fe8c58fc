// Rules for finds up to some size, beyond which nothing says what holds.
#include "criteria/alike_finds.hpp"
#include "criteria/band.hpp"
#include "criteria/doubts.hpp"
#include "criteria/limit_order.hpp"
#include "criteria/measured_by.hpp"
#include "criteria/remainder.hpp"
#include "measure/print.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Of which a find has the more, the worse it is.
constexpr Quantity sizes[] = {Quantity::length, Quantity::width, Quantity::depth,
                              Quantity::height, Quantity::size,  Quantity::area};

/// What else is told of a rule that has such an end, and says it better.
constexpr std::string_view told_already[] = {"empty-band",         "never-decisive",      "never-together",
                                             "outside-scope",      "limit-turned-round",  "depth-not-limited",
                                             "height-not-limited", "size-not-limited",    "cracks-pass",
                                             "hole-between-bands", "bands-short-of-scope"};

Measures grows_with(Quantity q) {
    // The largest dimension is no less than any other.
    const Measures whole = Measures{1} << slot_of(Quantity::size);
    return q == Quantity::depth || q == Quantity::height ? whole | Measures{1} << slot_of(q) : whole;
}

/// The upper end of a band of finds that a rule speaks of.
struct FindBandEnd {
    const Rule *rule = nullptr;
    Quantity of = Quantity::size;
    Exact end;
    bool itself = false; ///< what is as large as the end belongs to the band
};

class FindBandEnds {
public:
    FindBandEnds(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts)
        : set_(set), vocabulary_(vocabulary), doubts_(doubts) {}

    void check() {
        std::vector<FindBandEnd> all;
        for (const auto &rule : set_.rules)
            for (const Quantity q : sizes)
                if (const auto end = end_of(rule, q)) all.push_back(*end);
        // Of several bands in a row the last one is told of.
        std::stable_sort(all.begin(), all.end(), [](const FindBandEnd &a, const FindBandEnd &b) {
            return a.of == b.of ? a.end > b.end : a.of < b.of;
        });
        std::vector<FindBandEnd> told;
        for (const auto &one : all) {
            const bool before = std::any_of(told.begin(), told.end(), [&](const FindBandEnd &other) {
                return other.rule == one.rule || (other.of == one.of && meet(*other.rule, *one.rule));
            });
            if (!before && check_end(one)) told.push_back(one);
        }
    }

private:
    static std::optional<FindBandEnd> end_of(const Rule &rule, Quantity q) {
        Band band;
        for (const auto &c : rule.where)
            if (compares_plainly(c) && c.left.lone_quantity() == slot_of(q)) band.narrow(c);
        if (!band.high || band.empty() || rule.only_with) return std::nullopt;
        return FindBandEnd{&rule, q, *band.high, band.high_in};
    }

    bool check_end(const FindBandEnd &one) {
        const Rule &rule = *one.rule;
        if (std::any_of(std::begin(told_already), std::end(told_already),
                        [&](std::string_view check) { return told_of_such(check, rule); }))
            return false;
        std::vector<Condition> holding{beyond(one)};
        for (const auto &c : asked_by(rule))
            if (!compares_plainly(c) || c.left.lone_quantity() != slot_of(one.of)) holding.push_back(c);
        for (std::size_t c = 0; c < set_.classes.size(); ++c) {
            const Limit::Kind kind = rule.limits[c].kind;
            if (kind == Limit::Kind::other || kind == Limit::Kind::not_said) continue;
            const auto tells = [&](const AlikeFinds &finds) { return check_finds(one, holding, finds); };
            if (any_alike(set_, vocabulary_, rule.subject, c, tells)) return true;
        }
        return false;
    }
    /// Of this rule, or of another one for the same finds.
    bool told_of_such(std::string_view check, const Rule &rule) const {
        return std::any_of(set_.rules.begin(), set_.rules.end(), [&](const Rule &other) {
            return doubts_.told(check, other.id) && meet(other, rule);
        });
    }
    static bool meet(const Rule &a, const Rule &b) {
        return (a.subject.types & b.subject.types).any() && (a.subject.exams & b.subject.exams).any();
    }

    bool check_finds(const FindBandEnd &one, const std::vector<Condition> &holding, const AlikeFinds &finds) {
        std::vector<std::vector<Condition>> taken_out;
        std::vector<const Rule *> others;
        for (const auto index : set_.rules_for(finds.type, finds.exam)) {
            const Rule &other = set_.rules[index];
            const Limit::Kind kind = other.limits[finds.of_class].kind;
            if (&other == one.rule || kind == Limit::Kind::other) continue;
            if (says_of_it(other, one) && !lets_more_pass(other, one, finds.of_class))
                taken_out.push_back(asked_by(other));
            else if (kind != Limit::Kind::not_said)
                others.push_back(&other);
        }
        const bool told_why = take_out_gaps(finds, taken_out);
        for (const Rule *other : others)
            if (const auto rest = remainder_of(set_, asked_beside(holding, *other), taken_out))
                return tell(one, finds, *rest, other);
        if (told_why) return false;
        const auto rest = remainder_of(set_, holding, taken_out);
        return rest && tell(one, finds, *rest, nullptr);
    }
    /// Of the find as such, of the same measure, or of what grows with what the band goes by.
    static bool says_of_it(const Rule &other, const FindBandEnd &one) {
        if (other.kind == Rule::Kind::presence) return true;
        const Measures measures = measured_by(other);
        return (measures & measured_by(*one.rule)) != 0 ||
               (is_maximum(other.compare) && (measures & grows_with(one.of)) != 0);
    }

    /// What a count or a sum leaves out is held by another one singly, up to a larger size: any number of
    /// those passes.
    bool lets_more_pass(const Rule &other, const FindBandEnd &one, std::size_t of_class) const {
        const bool together = one.rule->kind == Rule::Kind::count || one.rule->kind == Rule::Kind::sum;
        const Limit &limit = other.limits[of_class];
        if (!together || other.kind != Rule::Kind::each || limit.kind != Limit::Kind::value ||
            other.measure.lone_quantity() != slot_of(one.of))
            return false;
        const Formula end = Formula::constant(one.end, info(one.of).dimension);
        const auto units = units_to_try(set_, other);
        return std::any_of(units.begin(), units.end(), [&](Unit unit) {
            return may_be_over(where_hold(conditions_of(set_, other), unit), limit.formula, end, unit) ==
                   true;
        });
    }

    static Condition beyond(const FindBandEnd &one) {
        Condition out;
        out.left = formula_of(one.of);
        out.edges = {{one.itself ? Compare::over : Compare::at_least,
                      Formula::constant(one.end, info(one.of).dimension)}};
        return out;
    }

    /// `other` counts, spaces or measures something else of it; null: no rule speaks of it at all.
    bool tell(const FindBandEnd &one, const AlikeFinds &finds, const std::string &rest, const Rule *other) {
        const std::string name(info(one.of).name);
        const std::string end = print(one.end, info(one.of).dimension, set_.unit);
        const std::string beyond = name + (one.itself ? " over " : " from ") + end;
        const std::string there = rest.find(name) != std::string::npos ? rest
                                  : rest.empty()                       ? beyond
                                                                       : beyond + " and " + rest;
        doubts_.tell(
            "bands-short-of-finds", one.rule->id, one.rule->where_from, "rules." + one.rule->id,
            "it speaks of finds up to a " + name + " of " + end + ", and for class " +
                set_.classes[finds.of_class].id + " of " + vocabulary_[finds.type].name + " by " +
                std::string(name_of(finds.exam)) + " with a " + there +
                (other && other->kind == Rule::Kind::each && other->measure.lone_quantity() == slot_of(one.of)
                     ? " rule '" + other->id + "' holds each by itself, and none is " +
                           (one.rule->kind == Rule::Kind::count ? "counted" : "added")
                 : other ? " only rule '" + other->id + "' speaks, whatever the " + name
                         : " no rule speaks, so that it stays open (cannot say)") +
                ": add a rule for those, if only 'allowed: none'");
        return true;
    }

    const CriteriaSet &set_;
    const Vocabulary &vocabulary_;
    Doubts &doubts_;
};

} // namespace

void check_find_band_ends(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts) {
    FindBandEnds(set, vocabulary, doubts).check();
}

} // namespace beadbook
