// Finds that are added, counted or spaced, of which only some are held by their size, one by one.
#include "criteria/alike_finds.hpp"
#include "criteria/doubts.hpp"
#include "criteria/measured_by.hpp"
#include "criteria/own_measure.hpp"
#include "criteria/remainder.hpp"
#include "criteria/vocabulary.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Whoever tells one of these of a rule for the same finds says it better.
constexpr std::string_view said_better[] = {
    "bands-short-of-scope", "never-together",   "never-decisive",     "outside-scope",
    "size-not-limited",     "groups-alone",     "hole-between-bands", "limit-turned-round",
    "class-left-out",       "nothing-rejected", "cracks-pass",        "measure-of-another",
    "linear-beyond-belief", "empty-band",       "always-rejects",     "bands-short-of-finds",
    "depth-not-limited",    "window-too-short", "limits-far-apart",   "two-limits",
    "shadowed-rule"};

class SomeSized {
public:
    SomeSized(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts)
        : set_(set), vocabulary_(vocabulary), doubts_(doubts) {}

    void check() {
        for (const auto &rule : set_.rules)
            if (rule.kind == Rule::Kind::sum || rule.kind == Rule::Kind::count ||
                rule.kind == Rule::Kind::gap)
                check_finds_of(rule);
    }

private:
    void check_finds_of(const Rule &rule) {
        for (std::size_t c = 0; c < set_.classes.size(); ++c) {
            if (rule.limits[c].kind != Limit::Kind::value) continue;
            const auto tells = [&](const AlikeFinds &finds) { return check_finds(rule, finds); };
            if (any_alike(set_, vocabulary_, rule.subject, c, tells)) return;
        }
    }

    bool check_finds(const Rule &rule, const AlikeFinds &finds) {
        // How large a group is says nothing of what is in it; of shapes and dimensions other measures count.
        if (vocabulary_[finds.type].is_group() || own_measure(vocabulary_, finds.type) != OwnMeasure::extent)
            return false;
        const Rule *beside = nullptr; // holds the size of some
        std::vector<std::vector<Condition>> taken_out;
        for (const auto &other : set_.rules) {
            if (&other == &rule || !other.subject.exams[static_cast<std::size_t>(finds.exam)]) continue;
            const bool holds = holds_one(other, finds);
            if (holds && other.subject.covers(finds.type, finds.exam)) taken_out.push_back(asked_by(other));
            const bool of_number =
                other.kind == Rule::Kind::each && other.limits[finds.of_class].kind == Limit::Kind::value;
            if (beside || !((holds && of_number) || holds_width_of_round(other, finds)) ||
                !meets(other, rule, finds) || !may_be_together(rule, other))
                continue;
            if (is_within(rule, other, finds.of_class)) return false;
            beside = &other;
        }
        if (!beside || doubts_.told("size-not-limited", beside->id) || told_better(finds)) return false;
        for (const Gap *gap : finds.gaps)
            if (gap->beside_rules) taken_out.push_back(asked_by(*gap));
        std::vector<Condition> holding = asked_by(rule);
        // Whatever is small enough was meant to be left.
        Condition large;
        large.left = formula_of(Quantity::size);
        large.edges = {{Compare::over, beside->limits[finds.of_class].formula}};
        holding.push_back(large);
        const auto rest = remainder_of(set_, holding, taken_out);
        if (!rest) return false;
        doubts_.tell("size-not-limited", beside->id, beside->where_from, "rules." + beside->id,
                     std::string(of_width(*beside) ? "it holds how wide one may be, and how long, for class "
                                                   : "it holds how large one may be, and for class ") +
                         set_.classes[finds.of_class].id + " of " + vocabulary_[finds.type].name + " by " +
                         std::string(name_of(finds.exam)) + (rest->empty() ? "" : ", " + *rest) +
                         ", no rule does: rule '" + rule.id + "' " +
                         (rule.kind == Rule::Kind::sum     ? "adds"
                          : rule.kind == Rule::Kind::count ? "counts"
                                                           : "spaces") +
                         " those, and one may be larger than '" + beside->limits[finds.of_class].text + "'");
        return true;
    }

    /// Finds of the same family by the same method, some of which the other rule speaks of as well.
    bool meets(const Rule &other, const Rule &rule, const AlikeFinds &finds) const {
        if (!other.subject.exams[static_cast<std::size_t>(finds.exam)]) return false;
        for (std::size_t t = 0; t < vocabulary_.size(); ++t)
            if (other.subject.types[t] && rule.subject.types[t] &&
                widest(static_cast<TypeId>(t)) == widest(finds.type))
                return true;
        return false;
    }
    TypeId widest(TypeId type) const {
        while (vocabulary_[type].under) type = *vocabulary_[type].under;
        return type;
    }

    /// One by itself, by its extent or as such.
    bool holds_one(const Rule &other, const AlikeFinds &finds) const {
        const Limit::Kind kind = other.limits[finds.of_class].kind;
        if (kind == Limit::Kind::free || kind == Limit::Kind::other) return false;
        if (other.kind == Rule::Kind::presence || kind != Limit::Kind::value) return true;
        return other.kind == Rule::Kind::each && is_maximum(other.compare) &&
               (measured_by(other) & along) != 0 && !(of_width(other) && is_round(finds));
    }
    static bool of_width(const Rule &other) {
        return other.kind == Rule::Kind::each && other.measure.lone_quantity() == slot_of(Quantity::width);
    }
    /// What is narrow may be as long as its sum; of a round one that cannot be meant.
    bool is_round(const AlikeFinds &finds) const { return vocabulary_[finds.type].shape == Shape::rounded; }
    bool holds_width_of_round(const Rule &other, const AlikeFinds &finds) const {
        return of_width(other) && is_maximum(other.compare) && is_round(finds) &&
               other.limits[finds.of_class].kind == Limit::Kind::value;
    }
    /// All together are no more than one may be.
    bool is_within(const Rule &rule, const Rule &other, std::size_t c) const {
        if (rule.kind != Rule::Kind::sum || rule.dimension() != other.dimension()) return false;
        const auto units = units_to_try(set_, rule);
        return std::all_of(units.begin(), units.end(), [&](Unit unit) {
            return may_be_over(where_hold(conditions_of(set_, rule), unit), rule.limits[c].formula,
                               other.limits[c].formula, unit) == false;
        });
    }
    bool may_be_together(const Rule &rule, const Rule &other) const {
        return remainder_of(set_, asked_beside(asked_by(rule), other), {}).has_value();
    }
    bool told_better(const AlikeFinds &finds) const {
        return std::any_of(set_.rules.begin(), set_.rules.end(), [&](const Rule &other) {
            return other.subject.covers(finds.type, finds.exam) &&
                   std::any_of(std::begin(said_better), std::end(said_better),
                               [&](std::string_view check) { return doubts_.told(check, other.id); });
        });
    }

    const CriteriaSet &set_;
    const Vocabulary &vocabulary_;
    Doubts &doubts_;
};

} // namespace

void check_sizes_of_some(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts) {
    SomeSized(set, vocabulary, doubts).check();
}

} // namespace beadbook
