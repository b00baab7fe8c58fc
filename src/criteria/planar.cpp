// What passes that never should.
#include "criteria/planar.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// None of those of which it speaks; the others it forbids not.
bool forbids_some(const Rule &rule, std::size_t c) {
    return rule.limits[c].kind == Limit::Kind::none && !rule.where.empty();
}

bool lets_some_pass(const Rule &rule, std::size_t c) {
    const Limit &limit = rule.limits[c];
    if (forbids_some(rule, c)) return true;
    if (limit.kind == Limit::Kind::free) return true;
    return limit.kind == Limit::Kind::value && !(is_maximum(rule.compare) && limit.formula.is_constant() &&
                                                 !(limit.formula.constant_value() > Exact(0)));
}

bool forbids(const std::vector<const Rule *> &rules, std::size_t c) {
    return !rules.empty() && rules.front()->limits[c].kind == Limit::Kind::none;
}

class PlanarPasses {
public:
    PlanarPasses(const CriteriaSet &set, const Vocabulary &vocabulary, std::optional<std::size_t> of_class)
        : set_(set), vocabulary_(vocabulary), from_(of_class.value_or(0)),
          to_(of_class ? *of_class + 1 : set.classes.size()) {}

    std::vector<PlanarPass> all() {
        for (std::size_t c = from_; c < to_; ++c)
            if (take_cracks(c)) break; // of one class is enough to be told
        take_planar();
        return std::move(out_);
    }

private:
    /// A crack that does not count is accepted.
    bool take_cracks(std::size_t c) {
        const auto crack = vocabulary_.find("crack");
        if (!crack) return false;
        for (std::size_t e = 0; e < exam_count; ++e) {
            const Exam exam = static_cast<Exam>(e);
            const auto rules = rules_of(set_, *crack, exam, c);
            for (const auto &one : set_.relevance)
                if (one.subject.covers(*crack, exam) && one.classes[c] && forbids(rules, c)) {
                    out_.push_back({*crack, c, rules.front(), &one});
                    return true;
                }
        }
        return false;
    }

    /// Every rule that speaks of them lets some through: without a limit, or up to one.
    void take_planar() {
        for (const char *wider : {"crack", "incomplete fusion", "incomplete penetration"})
            for (std::size_t t = 0; t < vocabulary_.size(); ++t)
                for (std::size_t e = 0; e < exam_count; ++e)
                    for (std::size_t c = from_; c < to_; ++c) {
                        const auto type = static_cast<TypeId>(t);
                        if (!vocabulary_.is_a(type, *vocabulary_.find(wider))) continue;
                        const auto rules = rules_of(set_, type, static_cast<Exam>(e), c);
                        if (rules.empty() || in_gap(set_, type, static_cast<Exam>(e), c) ||
                            !std::all_of(rules.begin(), rules.end(),
                                         [&](const Rule *rule) { return lets_some_pass(*rule, c); }) ||
                            std::any_of(rules.begin(), rules.end(),
                                        [&](const Rule *rule) { return told(rule); }))
                            continue;
                        out_.push_back({type, c, rules.front(), nullptr});
                    }
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
        return "a crack that is small enough does not count, though rule '" + rule->id + "' forbids cracks";
    const Limit &limit = rule->limits[class_index];
    if (forbids_some(*rule, class_index))
        return "it forbids for class " + set.classes[class_index].id + " only what is " +
               rule->where.front().text + ", and no other rule forbids " + vocabulary[type].name +
               " there: some is accepted";
    const bool free = limit.kind == Limit::Kind::free;
    return (free ? "it has no limit for class " : "it allows '" + limit.text + "' for class ") +
           set.classes[class_index].id + ", and no other rule forbids " + vocabulary[type].name +
           " there: " + (free ? "any" : "some") + " is accepted";
}

std::vector<PlanarPass> planar_passes(const CriteriaSet &set, const Vocabulary &vocabulary,
                                      std::optional<std::size_t> of_class) {
    return PlanarPasses(set, vocabulary, of_class).all();
}

} // namespace beadbook
