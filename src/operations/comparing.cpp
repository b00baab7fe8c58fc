#include "operations/comparing.hpp"

#include "operations/at_thickness.hpp"
#include "operations/compared_side.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

using SaidKind = SaidOfThing::Kind;
constexpr std::int64_t last_thickness_nm = 1000 * nm_per_mm;

bool is_number_or_word(SaidKind kind) {
    return kind == SaidKind::value || kind == SaidKind::none || kind == SaidKind::free;
}
bool is_left_open(SaidKind kind) {
    return kind == SaidKind::ask || kind == SaidKind::not_said || kind == SaidKind::gap ||
           kind == SaidKind::no_row || kind == SaidKind::blank;
}

CompareOutcome outcome_of(LimitRelation relation) {
    switch (relation) {
    case LimitRelation::equal: return CompareOutcome::equal;
    case LimitRelation::stricter: return CompareOutcome::stricter;
    case LimitRelation::looser: return CompareOutcome::looser;
    case LimitRelation::never_looser: return CompareOutcome::never_looser;
    case LimitRelation::never_stricter: return CompareOutcome::never_stricter;
    case LimitRelation::either: return CompareOutcome::either;
    case LimitRelation::unknown: break;
    }
    return CompareOutcome::open;
}

/// What both sides say at one thickness.
struct AtThickness {
    SaidOfThing first, second;
    CompareOutcome outcome = CompareOutcome::open;
    bool silent = false; ///< neither speaks

    friend bool alike(const AtThickness &a, const AtThickness &b) {
        const auto same = [](const SaidOfThing &x, const SaidOfThing &y) {
            return x.kind == y.kind && x.rule == y.rule && x.also == y.also;
        };
        return same(a.first, b.first) && same(a.second, b.second) && a.outcome == b.outcome;
    }
};

/// Types that the same rules and gaps of both sides speak of, by one examination.
struct TypesAlike {
    std::vector<std::size_t> rules[2], gaps[2];
    TypeSet types;
};

class ComparedPair {
public:
    ComparedPair(const ComparedSide &first, const ComparedSide &second, const Coupon &facts, Unit unit)
        : first_(first), second_(second), facts_(facts), unit_(unit) {}

    void compare_finds(ComparedClasses &out) const {
        for (const Exam exam : all_exams()) {
            const auto at = static_cast<std::size_t>(exam);
            std::vector<ComparedThing> things;
            for (const auto &alike_types : groups(exam)) {
                const bool a = !alike_types.rules[0].empty(), b = !alike_types.rules[1].empty();
                if (a && !b) out.only_first[at] |= alike_types.types;
                if (b && !a) out.only_second[at] |= alike_types.types;
                if (a && b) add_things(exam, alike_types, things);
            }
            for (auto &thing : things) out.things.push_back(std::move(thing));
        }
    }

private:
    std::vector<TypesAlike> groups(Exam exam) const {
        std::vector<TypesAlike> out;
        for (std::size_t t = 0; t < Vocabulary::shipped().size(); ++t) {
            const auto type = static_cast<TypeId>(t);
            TypesAlike one{{first_.rules_for(type, exam), second_.rules_for(type, exam)},
                           {first_.gaps_for(type, exam), second_.gaps_for(type, exam)},
                           {}};
            if (one.rules[0].empty() && one.rules[1].empty()) continue;
            const auto same = std::find_if(out.begin(), out.end(), [&](const TypesAlike &other) {
                return std::equal(other.rules, other.rules + 2, one.rules) &&
                       std::equal(other.gaps, other.gaps + 2, one.gaps);
            });
            if (same != out.end()) {
                same->types.set(t);
                continue;
            }
            one.types.set(t);
            out.push_back(std::move(one));
        }
        return out;
    }

    void add_things(Exam exam, const TypesAlike &group, std::vector<ComparedThing> &out) const {
        std::set<std::pair<std::string, std::vector<std::string>>> seen;
        for (const bool of_second : {false, true})
            for (const std::size_t index : group.rules[of_second ? 1 : 0]) {
                const ComparedRule &one = (of_second ? second_ : first_).rule(index);
                if (!seen.insert({one.measure, one.needs}).second || told_by_measures(group, one)) continue;
                ComparedThing thing{exam, group.types, of_second, index, one.told, stretches(group, one)};
                if (thing.stretches.empty()) continue;
                const auto same = std::find_if(out.begin(), out.end(), [&](const ComparedThing &other) {
                    return other.of_second == of_second && other.rule == index &&
                           same_stretches(other.stretches, thing.stretches);
                });
                if (same == out.end())
                    out.push_back(std::move(thing));
                else
                    same->types |= group.types;
            }
    }

    /// A rule that allows or forbids, beside others under the same conditions that measure: theirs say it
    /// too.
    bool told_by_measures(const TypesAlike &group, const ComparedRule &one) const {
        if (one.measure != any_occurrence) return false;
        const auto measures = [&](const ComparedSide &side, const std::vector<std::size_t> &rules) {
            return std::any_of(rules.begin(), rules.end(), [&](std::size_t index) {
                return side.rule(index).measure != any_occurrence && side.rule(index).needs == one.needs;
            });
        };
        return measures(first_, group.rules[0]) || measures(second_, group.rules[1]);
    }

    static bool same_stretches(const std::vector<ThicknessStretch> &a,
                               const std::vector<ThicknessStretch> &b) {
        return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                          [](const ThicknessStretch &x, const ThicknessStretch &y) {
                              return x.from == y.from && x.to == y.to && x.outcome == y.outcome &&
                                     x.first.kind == y.first.kind && x.first.rule == y.first.rule &&
                                     x.second.kind == y.second.kind && x.second.rule == y.second.rule;
                          });
    }

    AtThickness at(const TypesAlike &group, const ComparedRule &one, std::int64_t nm) const {
        const Coupon coupon = so_thick(facts_, nm, unit_);
        const std::vector<Coupon> coupons = ways_to_be(coupon, one.of_coupon);
        AtThickness out;
        out.first = first_.said(one.measure, one.needs, group.rules[0], group.gaps[0], coupons);
        out.second = second_.said(one.measure, one.needs, group.rules[1], group.gaps[1], coupons);
        const SaidKind a = out.first.kind, b = out.second.kind;
        const bool says_a = is_number_or_word(a), says_b = is_number_or_word(b);
        if (a == SaidKind::value && b == SaidKind::value)
            out.outcome = of_values(out.first, out.second, coupon);
        else if (says_a && says_b)
            out.outcome = a == b                                       ? CompareOutcome::equal
                          : a == SaidKind::none || b == SaidKind::free ? CompareOutcome::stricter
                                                                       : CompareOutcome::looser;
        else if (a == SaidKind::measured || b == SaidKind::measured)
            take_measured(out);
        else if (is_left_open(a) || is_left_open(b))
            out.outcome = a == b && (a != SaidKind::blank || same_blank(out)) ? CompareOutcome::equal
                                                                              : CompareOutcome::open;
        else if (says_a || says_b)
            out.outcome = says_a ? CompareOutcome::only_first : CompareOutcome::only_second;
        else
            out.silent = true;
        return out;
    }
    /// What forbids it is stricter than any limit, what allows it looser; of all else its measure tells.
    static void take_measured(AtThickness &out) {
        const bool of_first = out.first.kind == SaidKind::measured;
        const SaidKind other = of_first ? out.second.kind : out.first.kind;
        if (other == SaidKind::none)
            out.outcome = of_first ? CompareOutcome::looser : CompareOutcome::stricter;
        else if (other == SaidKind::free)
            out.outcome = of_first ? CompareOutcome::stricter : CompareOutcome::looser;
        else
            out.silent = !is_left_open(other);
    }
    /// A blank has one number a class: of another class or set it is another number.
    bool same_blank(const AtThickness &both) const {
        return first_.set().hash == second_.set().hash && first_.class_index() == second_.class_index() &&
               both.first.rule == both.second.rule;
    }
    CompareOutcome of_values(const SaidOfThing &a, const SaidOfThing &b, const Coupon &coupon) const {
        if (a.also.empty() && b.also.empty()) return outcome_of(relation(a.rule, b.rule, coupon));
        std::vector<std::size_t> in_first = a.also, in_second = b.also;
        in_first.push_back(a.rule);
        in_second.push_back(b.rule);
        // The strictest of several is no looser than another where each of the other's has one no looser.
        const auto none_looser = [&](bool first) {
            const auto &of = first ? in_first : in_second, &than = first ? in_second : in_first;
            return std::all_of(than.begin(), than.end(), [&](std::size_t y) {
                return std::any_of(of.begin(), of.end(), [&](std::size_t x) {
                    const LimitRelation r = first ? relation(x, y, coupon) : relation(y, x, coupon);
                    return r == LimitRelation::equal ||
                           r == (first ? LimitRelation::stricter : LimitRelation::looser) ||
                           r == (first ? LimitRelation::never_looser : LimitRelation::never_stricter);
                });
            });
        };
        const bool first = none_looser(true), second = none_looser(false);
        return first && second ? CompareOutcome::equal
               : first         ? CompareOutcome::never_looser
               : second        ? CompareOutcome::never_stricter
                               : CompareOutcome::open;
    }
    LimitRelation relation(std::size_t in_first, std::size_t in_second, const Coupon &coupon) const {
        return limit_relation({first_.set().rules[in_first], first_.limit(in_first).formula},
                              {second_.set().rules[in_second], second_.limit(in_second).formula}, coupon,
                              unit_);
    }

    std::vector<ThicknessStretch> stretches(const TypesAlike &group, const ComparedRule &one) const {
        std::set<std::int64_t> points{1};
        for (const std::int64_t nm : usual_thicknesses(unit_)) points.insert(nm);
        for (std::int64_t nm = *points.rbegin() * 2; nm < last_thickness_nm; nm *= 2) points.insert(nm);
        points.insert(last_thickness_nm);
        for (const ComparedSide *side : {&first_, &second_})
            for (const std::int64_t nm :
                 side->edges(group.rules[side == &second_], group.gaps[side == &second_], facts_))
                points.insert(nm);
        std::map<std::int64_t, AtThickness> all;
        for (const std::int64_t nm : points) all.emplace(nm, at(group, one, nm));
        for (auto p = points.begin(); std::next(p) != points.end(); ++p)
            find_edges(group, one, *p, *std::next(p), all);
        return joined_up(all);
    }

    /// Between two thicknesses with another outcome: those beside each change.
    void find_edges(const TypesAlike &group, const ComparedRule &one, std::int64_t from, std::int64_t to,
                    std::map<std::int64_t, AtThickness> &all) const {
        if (to - from < 2 || alike(all.at(from), all.at(to))) return;
        const std::int64_t middle = from + (to - from) / 2;
        all.emplace(middle, at(group, one, middle));
        find_edges(group, one, from, middle, all);
        find_edges(group, one, middle, to, all);
    }

    std::vector<ThicknessStretch> joined_up(const std::map<std::int64_t, AtThickness> &all) const {
        std::vector<ThicknessStretch> out;
        for (auto begin = all.begin(); begin != all.end();) {
            auto last = begin;
            while (std::next(last) != all.end() && alike(begin->second, std::next(last)->second)) ++last;
            if (!begin->second.silent) {
                ThicknessStretch one{begin->first, last->first, begin->second.first, begin->second.second,
                                     begin->second.outcome};
                if (last->first == last_thickness_nm) one.to.reset();
                add_numbers(one);
                out.push_back(std::move(one));
            }
            begin = std::next(last);
        }
        return out;
    }

    void add_numbers(ThicknessStretch &one) const {
        for (const bool at_end : {false, true}) {
            if (at_end ? !one.to : one.from == 1) continue; // from nothing on
            const Coupon coupon = so_thick(facts_, at_end ? *one.to : one.from, unit_);
            (at_end ? one.first.to : one.first.from) = first_.number(one.first, coupon);
            (at_end ? one.second.to : one.second.from) = second_.number(one.second, coupon);
        }
    }

    const ComparedSide &first_, &second_;
    const Coupon &facts_;
    Unit unit_;
};

/// What stands on one side only, by its text; `words` gives none for what is not for the class.
template <class Words>
OnlyInOne only_in_one(std::size_t first, std::size_t second, Words words) {
    std::multiset<std::string> in_first, in_second;
    for (std::size_t i = 0; i < first; ++i) in_first.insert(words(false, i));
    for (std::size_t i = 0; i < second; ++i) in_second.insert(words(true, i));
    OnlyInOne out;
    for (std::size_t i = 0; i < first; ++i)
        if (const std::string text = words(false, i); !text.empty() && !in_second.contains(text))
            out.first.push_back(i);
    for (std::size_t i = 0; i < second; ++i)
        if (const std::string text = words(true, i); !text.empty() && !in_first.contains(text))
            out.second.push_back(i);
    return out;
}

std::string texts_of(const std::vector<Condition> &conditions) {
    std::string out;
    for (const auto &c : conditions) out += "|" + c.text;
    return out;
}

/// Of a number of others at the borderline "under 2" is "at most 1".
std::string limit_words(const Rule &rule, const Limit &limit) {
    if (limit.kind != Limit::Kind::value || rule.kind != Rule::Kind::combine) return limit.text;
    if (!limit.formula.is_constant()) return std::string(name_of(rule.compare)) + " " + limit.text;
    const Exact most = most_counted(limit.formula.constant_value(), rule.compare);
    return "at most " + std::to_string(static_cast<long long>(most.num()));
}

void compare_rest(const ComparedSide &first, const ComparedSide &second, ComparedClasses &out) {
    const CriteriaSet &a = first.set(), &b = second.set();
    const auto side = [&](bool of_second) -> const ComparedSide & { return of_second ? second : first; };
    out.rules = only_in_one(a.rules.size(), b.rules.size(), [&](bool of_second, std::size_t i) {
        const Rule &rule = side(of_second).set().rules[i];
        const Limit &limit = side(of_second).limit(i);
        if (side(of_second).rule(i).on_finds || limit.kind == Limit::Kind::other) return std::string();
        return rule.title + texts_of(rule.when) + "|" + limit_words(rule, limit);
    });
    out.scope = only_in_one(a.scope.size(), b.scope.size(), [&](bool of_second, std::size_t i) {
        const ScopePart &part = side(of_second).set().scope[i];
        return "|" + part.text + texts_of(part.only_if);
    });
    out.required = only_in_one(a.required.size(), b.required.size(), [&](bool of_second, std::size_t i) {
        const RequiredExam &exam = side(of_second).set().required[i];
        if (!exam.classes[side(of_second).class_index()]) return std::string();
        std::string text = texts_of(exam.when);
        for (const Exam one : exam.one_of) text += " " + std::string(name_of(one));
        return text;
    });
    out.relevance = only_in_one(a.relevance.size(), b.relevance.size(), [&](bool of_second, std::size_t i) {
        const Relevance &one = side(of_second).set().relevance[i];
        if (!one.classes[side(of_second).class_index()]) return std::string();
        return one.text + "|" + one.subject.types.to_string() + one.subject.exams.to_string();
    });
    out.merges = only_in_one(a.merges.size(), b.merges.size(), [&](bool of_second, std::size_t i) {
        const Merge &one = side(of_second).set().merges[i];
        return one.when.text + "|" + one.subject.types.to_string() + one.subject.exams.to_string();
    });
}

} // namespace

std::string_view name_of(CompareOutcome outcome) {
    switch (outcome) {
    case CompareOutcome::equal: return "equal";
    case CompareOutcome::stricter: return "stricter";
    case CompareOutcome::looser: return "looser";
    case CompareOutcome::never_looser: return "stricter or equal";
    case CompareOutcome::never_stricter: return "looser or equal";
    case CompareOutcome::either: return "stricter or looser";
    case CompareOutcome::only_first: return "only in the first";
    case CompareOutcome::only_second: return "only in the second";
    case CompareOutcome::open: break;
    }
    return "cannot say";
}

bool ComparedThing::all_equal() const {
    return std::all_of(stretches.begin(), stretches.end(),
                       [](const auto &one) { return one.outcome == CompareOutcome::equal; });
}

ComparedClasses compare_classes(const CriteriaSet &first, std::size_t class_of_first,
                                const CriteriaSet &second, std::size_t class_of_second, const Coupon &coupon,
                                Unit unit) {
    const Coupon facts = so_thick(coupon, nm_per_mm, unit);
    const ComparedSide a(first, class_of_first, facts, unit), b(second, class_of_second, facts, unit);
    ComparedClasses out;
    out.first = class_of_first;
    out.second = class_of_second;
    ComparedPair(a, b, facts, unit).compare_finds(out);
    compare_rest(a, b, out);
    return out;
}

} // namespace beadbook
