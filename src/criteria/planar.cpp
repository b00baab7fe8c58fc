// What passes that never should.
#include "criteria/planar.hpp"

#include "criteria/remainder.hpp"

#include <algorithm>

namespace beadbook {
namespace {

constexpr const char *planar_types[] = {"crack", "incomplete fusion", "incomplete penetration"};

/// What nobody has told the kind of may be a crack. Standards allow short ones, none allows any.
constexpr const char *unnamed_type = "linear indication";

/// None of those of which it speaks; the others it forbids not.
bool forbids_some(const Rule &rule, std::size_t c) {
    return rule.limits[c].kind == Limit::Kind::none && !rule.where.empty();
}

/// Of groups alone: what lies by itself is in none.
bool speaks_of_groups(const Rule &rule) { return rule.least_group > 1; }

/// Without a limit, or up to one, or of groups alone.
bool lets_some_pass(const Rule &rule, std::size_t c) {
    if (speaks_of_groups(rule)) return true;
    const Limit &limit = rule.limits[c];
    if (limit.kind == Limit::Kind::free) return true;
    return limit.kind == Limit::Kind::value && !(is_maximum(rule.compare) && limit.formula.is_constant() &&
                                                 !(limit.formula.constant_value() > Exact(0)));
}

class PlanarPasses {
public:
    PlanarPasses(const CriteriaSet &set, const Vocabulary &vocabulary, std::optional<std::size_t> of_class)
        : set_(set), vocabulary_(vocabulary), from_(of_class.value_or(0)),
          to_(of_class ? *of_class + 1 : set.classes.size()) {}

    std::vector<PlanarPass> all() {
        for (std::size_t c = from_; c < to_; ++c)
            if (take_uncounted(c)) break; // of one class is enough to be told
        take_planar();
        for (std::size_t e = 0; e < exam_count; ++e)
            for (std::size_t c = from_; c < to_; ++c)
                take_type(*vocabulary_.find(unnamed_type), static_cast<Exam>(e), c);
        return std::move(out_);
    }

private:
    /// What is forbidden and does not count is accepted.
    bool take_uncounted(std::size_t c) {
        for (const char *wider : planar_types)
            for (std::size_t e = 0; e < exam_count; ++e) {
                const Exam exam = static_cast<Exam>(e);
                const TypeId type = *vocabulary_.find(wider);
                const auto rules = rules_of(set_, type, exam, c);
                const auto forbids = std::find_if(rules.begin(), rules.end(), [&](const Rule *rule) {
                    return rule->limits[c].kind == Limit::Kind::none;
                });
                if (forbids == rules.end()) continue;
                for (const auto &one : set_.relevance)
                    if (one.subject.covers(type, exam) && one.classes[c]) {
                        out_.push_back({type, c, *forbids, &one, {}});
                        return true;
                    }
            }
        return false;
    }

    void take_planar() {
        for (const char *wider : planar_types)
            for (std::size_t t = 0; t < vocabulary_.size(); ++t)
                for (std::size_t e = 0; e < exam_count; ++e)
                    for (std::size_t c = from_; c < to_; ++c)
                        if (vocabulary_.is_a(static_cast<TypeId>(t), *vocabulary_.find(wider)))
                            take_type(static_cast<TypeId>(t), static_cast<Exam>(e), c);
    }

    /// Some rule lets some through where no other one, and no gap, stops them: of all that the set covers.
    void take_type(TypeId type, Exam exam, std::size_t c) {
        const auto rules = rules_of(set_, type, exam, c);
        if (rules.empty() ||
            std::any_of(rules.begin(), rules.end(), [&](const Rule *rule) { return told(rule); }))
            return;
        const bool unnamed = type == *vocabulary_.find(unnamed_type);
        const auto lets_pass = [&](const Rule &rule) {
            return unnamed ? rule.limits[c].kind == Limit::Kind::free
                           : lets_some_pass(rule, c) || rejects_only_together(rule);
        };
        const auto stops = stops_of(rules, type, exam, c, lets_pass);
        bool limited = false;
        for (const Rule *rule : rules) {
            if (!lets_pass(*rule)) continue;
            limited = true;
            std::vector<Condition> holding = asked_by(*rule);
            add_shape_of(type, holding);
            if (auto rest = remainder_of(set_, holding, stops))
                return out_.push_back({type, c, rule, nullptr, std::move(*rest)});
        }
        if (limited || unnamed ||
            !std::all_of(rules.begin(), rules.end(), [&](const Rule *r) { return forbids_some(*r, c); }))
            return;
        std::vector<Condition> any;
        add_shape_of(type, any);
        if (remainder_of(set_, any, stops)) out_.push_back({type, c, rules.front(), nullptr, {}});
    }

    /// By itself it stops nothing: another one must fail too.
    bool rejects_only_together(const Rule &rule) const {
        return rule.only_with || std::any_of(set_.rules.begin(), set_.rules.end(), [&](const Rule &other) {
                   return other.only_with && &set_.rules[*other.only_with] == &rule;
               });
    }

    /// What rules forbid or leave open, and what gaps keep open beside them.
    template <class LetsPass>
    std::vector<std::vector<Condition>> stops_of(const std::vector<const Rule *> &rules, TypeId type,
                                                 Exam exam, std::size_t c, LetsPass lets_pass) const {
        std::vector<std::vector<Condition>> out;
        for (const Rule *rule : rules)
            if (!lets_pass(*rule)) out.push_back(asked_by(*rule));
        for (const auto &gap : set_.gaps)
            if (gap.beside_rules && gap.classes[c] && gap.subject->covers(type, exam))
                out.push_back(asked_by(gap));
        return out;
    }

    /// Where a set tells shapes by length and width, a short crack is as rounded as a pore; what is called
    /// linear is taken by its name.
    void add_shape_of(TypeId type, std::vector<Condition> &conditions) const {
        if (!set_.linear || vocabulary_[type].name == unnamed_type)
            add_shape(conditions, vocabulary_[type].shape);
    }

    bool told(const Rule *rule) const {
        return std::any_of(out_.begin(), out_.end(),
                           [&](const PlanarPass &one) { return !one.relevance && one.rule == rule; });
    }

    const CriteriaSet &set_;
    const Vocabulary &vocabulary_;
    std::size_t from_, to_;
    std::vector<PlanarPass> out_;
};

} // namespace

bool is_planar(TypeId type, const Vocabulary &vocabulary) {
    return std::any_of(std::begin(planar_types), std::end(planar_types),
                       [&](const char *wider) { return vocabulary.is_a(type, *vocabulary.find(wider)); });
}

std::vector<const Rule *> rules_of(const CriteriaSet &set, TypeId type, Exam exam, std::size_t class_index) {
    std::vector<const Rule *> out;
    for (const auto index : set.rules_for(type, exam))
        if (set.rules[index].limits[class_index].kind != Limit::Kind::other) out.push_back(&set.rules[index]);
    return out;
}

bool in_gap(const CriteriaSet &set, TypeId type, Exam exam, std::size_t class_index) {
    return std::any_of(set.gaps.begin(), set.gaps.end(), [&](const Gap &gap) {
        return gap.subject && gap.subject->covers(type, exam) && gap.classes[class_index];
    });
}

std::string PlanarPass::words(const CriteriaSet &set, const Vocabulary &vocabulary) const {
    if (relevance)
        return vocabulary[type].name + " that is small enough does not count, though rule '" + rule->id +
               "' forbids it";
    const Limit &limit = rule->limits[class_index];
    if (forbids_some(*rule, class_index))
        return "it forbids for class " + set.classes[class_index].id + " only where " +
               rule->where.front().text + ", and no other rule forbids " + vocabulary[type].name +
               " elsewhere: the rest is never rejected";
    if (speaks_of_groups(*rule))
        return "it speaks only of groups of " + std::to_string(rule->least_group) +
               " or more, and no other rule forbids " + vocabulary[type].name + " for class " +
               set.classes[class_index].id + (rest.empty() ? "" : ", where " + rest) +
               ": one that lies alone is accepted";
    const bool free = limit.kind == Limit::Kind::free;
    const bool unnamed = vocabulary[type].name == unnamed_type;
    return (free ? "it has no limit for class " : "it allows '" + limit.text + "' for class ") +
           set.classes[class_index].id + ", and no other rule " + (unnamed ? "limits " : "forbids ") +
           vocabulary[type].name + " there" + (rest.empty() ? "" : ", where " + rest) + ": " +
           (free ? "any" : "some") + " is accepted" + (unnamed ? ", though it may be a crack" : "");
}

std::vector<PlanarPass> planar_passes(const CriteriaSet &set, const Vocabulary &vocabulary,
                                      std::optional<std::size_t> of_class) {
    return PlanarPasses(set, vocabulary, of_class).all();
}

} // namespace beadbook
