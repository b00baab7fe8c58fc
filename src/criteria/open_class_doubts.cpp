// Classes that reject nothing of what the others limit.
#include "criteria/doubts.hpp"
#include "criteria/remainder.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// With their kinds: whoever limits them for one class limits them for all. Common practice, no source; what
/// shipped sets leave free in their loosest class is none of them.
constexpr std::initializer_list<const char *> held_in_all{
    "gas pore", "inclusion", "undercut", "incompletely filled groove", "linear misalignment"};

/// With their kinds: whoever speaks of them holds them somewhere. Common practice, no source; what shipped
/// sets leave free is none of them.
constexpr std::initializer_list<const char *> held_if_named{
    "porosity",    "overlap", "burn-through",       "root concavity",
    "fillet size", "throat",  "excess penetration", "excess weld metal"};

bool may_reject(const Limit &limit) {
    return limit.kind == Limit::Kind::value || limit.kind == Limit::Kind::none;
}
bool lets_all_through(const Limit &limit) {
    return limit.kind == Limit::Kind::free || limit.kind == Limit::Kind::other;
}
bool may_reject_somewhere(const Rule &rule) {
    return std::any_of(rule.limits.begin(), rule.limits.end(), may_reject);
}

class OpenClasses {
public:
    OpenClasses(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts)
        : set_(set), vocabulary_(vocabulary), doubts_(doubts) {}

    void check() {
        if (std::none_of(set_.rules.begin(), set_.rules.end(), may_reject_somewhere)) return;
        for (std::size_t c = 0; c < set_.classes.size(); ++c)
            if (!check_whole(c)) check_types(c);
        for (std::size_t t = 0; t < vocabulary_.size(); ++t) check_type(static_cast<TypeId>(t));
        for (const auto &rule : set_.rules) check_part(rule);
    }

private:
    bool check_whole(std::size_t c) {
        if (!std::all_of(set_.rules.begin(), set_.rules.end(),
                         [&](const Rule &rule) { return lets_all_through(rule.limits[c]); }))
            return false;
        if (std::any_of(set_.rules.begin(), set_.rules.end(), [&](const Rule &rule) {
                return doubts_.told("class-left-out", rule.id) || doubts_.told("cracks-pass", rule.id);
            }))
            return true;
        doubts_.tell("nothing-rejected", set_.name, set_.classes_where, "rules",
                     "class " + set_.classes[c].id +
                         " rejects nothing: no rule has a limit for it, and other classes have");
        return true;
    }

    void check_types(std::size_t c) {
        for (std::size_t t = 0; t < vocabulary_.size(); ++t) {
            const auto type = static_cast<TypeId>(t);
            if (!is_a_kind_of(type, held_in_all)) continue;
            for (const Exam exam : all_exams()) {
                const Rule *open = open_rule(type, exam, c);
                if (!open || !limited_elsewhere(type, exam, c) || in_open_part(type, exam, c)) continue;
                if (doubts_.told("nothing-rejected", open->id) || doubts_.told("cracks-pass", open->id))
                    continue;
                doubts_.tell("nothing-rejected", open->id, open->where_from, "rules." + open->id,
                             "class " + set_.classes[c].id + " rejects no " + vocabulary_[type].name +
                                 " by " + std::string(name_of(exam)) +
                                 ", however large, and other classes limit it: is 'no limit' meant?");
            }
        }
    }

    /// No class rejects it, by any method.
    void check_type(TypeId type) {
        if (!is_a_kind_of(type, held_in_all) && !is_a_kind_of(type, held_if_named)) return;
        const Rule *open = nullptr;
        for (const Exam exam : all_exams()) {
            if (std::any_of(set_.gaps.begin(), set_.gaps.end(),
                            [&](const Gap &gap) { return gap.subject && gap.subject->covers(type, exam); }))
                return;
            for (const auto index : set_.rules_for(type, exam)) {
                const Rule &rule = set_.rules[index];
                if (!std::all_of(rule.limits.begin(), rule.limits.end(), lets_all_through)) return;
                if (!open && rule.limits[0].kind == Limit::Kind::free) open = &rule;
            }
        }
        if (!open || doubts_.told("nothing-rejected", open->id) || doubts_.told("cracks-pass", open->id))
            return;
        doubts_.tell("nothing-rejected", open->id, open->where_from, "rules." + open->id,
                     "no class rejects " + vocabulary_[type].name + " by any method, however large: is 'no " +
                         "limit' meant?");
    }

    /// Free in every class under a condition, where another rule holds the rest.
    void check_part(const Rule &rule) {
        const std::vector<Condition> asked = asked_by(rule);
        const auto is_free = [](const Limit &limit) { return limit.kind == Limit::Kind::free; };
        if (asked.empty() || !std::all_of(rule.limits.begin(), rule.limits.end(), is_free)) return;
        for (std::size_t t = 0; t < vocabulary_.size(); ++t)
            for (const Exam exam : all_exams()) {
                const auto type = static_cast<TypeId>(t);
                if (!rule.subject.covers(type, exam) || !is_a_kind_of(type, held_in_all)) continue;
                std::vector<std::vector<Condition>> held;
                for (const auto index : set_.rules_for(type, exam))
                    if (const Rule &other = set_.rules[index];
                        !std::all_of(other.limits.begin(), other.limits.end(), lets_all_through))
                        held.push_back(asked_by(other));
                if (held.empty()) continue;
                for (const auto &gap : set_.gaps)
                    if (gap.beside_rules && gap.subject->covers(type, exam)) held.push_back(asked_by(gap));
                if (!remainder_of(set_, asked, held)) continue;
                return doubts_.tell("nothing-rejected", rule.id, rule.where_from, "rules." + rule.id,
                                    "no class rejects " + vocabulary_[type].name + " where " +
                                        asked.front().text +
                                        ", however large, and elsewhere they do: is 'no limit' meant?");
            }
    }

    /// The first that lets all through, where no rule of the class does otherwise; null: some does.
    const Rule *open_rule(TypeId type, Exam exam, std::size_t c) const {
        const Rule *out = nullptr;
        for (const auto index : set_.rules_for(type, exam)) {
            const Rule &rule = set_.rules[index];
            if (!lets_all_through(rule.limits[c])) return nullptr;
            if (!out && rule.limits[c].kind == Limit::Kind::free) out = &rule;
        }
        return out;
    }
    /// By a looser class alone: the order of the classes tells it.
    bool limited_elsewhere(TypeId type, Exam exam, std::size_t c) const {
        bool stricter = false, looser = false;
        for (const auto index : set_.rules_for(type, exam))
            for (std::size_t k = 0; k < set_.classes.size(); ++k)
                (k < c ? stricter : looser) =
                    (k < c ? stricter : looser) || may_reject(set_.rules[index].limits[k]);
        return set_.ordered ? stricter && !looser : stricter || looser;
    }
    bool in_open_part(TypeId type, Exam exam, std::size_t c) const {
        return std::any_of(set_.gaps.begin(), set_.gaps.end(), [&](const Gap &gap) {
            return gap.subject && gap.beside_rules && gap.classes[c] && gap.subject->covers(type, exam);
        });
    }

    bool is_a_kind_of(TypeId type, std::initializer_list<const char *> names) const {
        return std::any_of(names.begin(), names.end(),
                           [&](const char *name) { return vocabulary_.is_a(type, *vocabulary_.find(name)); });
    }

    const CriteriaSet &set_;
    const Vocabulary &vocabulary_;
    Doubts &doubts_;
};

} // namespace

void check_open_classes(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts) {
    OpenClasses(set, vocabulary, doubts).check();
}

} // namespace beadbook
