// Finds of which something is limited, and not how large or how deep they are.
#include "criteria/alike_finds.hpp"
#include "criteria/doubts.hpp"
#include "criteria/measured_by.hpp"
#include "criteria/remainder.hpp"
#include "criteria/vocabulary.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Nobody finds anything as large: what is held only up to some size does not hold it.
constexpr std::int64_t very_large = 1'000'000'000'000;

Condition larger(Quantity q) {
    Condition out;
    out.left = formula_of(q);
    const Dimension dimension = info(q).dimension;
    const Exact value =
        dimension == Dimension::area ? Exact(very_large) * Exact(very_large) : Exact(very_large);
    out.edges = {{Compare::over, Formula::constant(value, dimension)}};
    return out;
}

bool has_number(const Rule &rule, std::size_t c) { return rule.limits[c].kind == Limit::Kind::value; }

/// It says what is allowed, or that a person must.
bool speaks(const Rule &rule, std::size_t c) {
    return rule.limits[c].kind != Limit::Kind::free && rule.limits[c].kind != Limit::Kind::other;
}

bool of_width_alone(const Rule &rule) {
    return rule.kind == Rule::Kind::each && rule.measure.lone_quantity() == slot_of(Quantity::width);
}

/// They lie open at the surface, and are worse the deeper they go.
constexpr const char *hollow_types[] = {"undercut", "incompletely filled groove", "root concavity"};

/// How wide it stands open is all that is measured of it.
bool is_root_gap(const Vocabulary &words, TypeId type) {
    return words.is_a(type, *words.find("incorrect root gap"));
}

bool limits_extent(const Rule &rule) {
    return rule.kind == Rule::Kind::presence ||
           (!of_width_alone(rule) && (measured_by(rule) & (along | into)) != 0);
}

std::string measure_words(const Rule &rule) {
    if (rule.kind == Rule::Kind::count) return "number";
    if (rule.kind == Rule::Kind::gap) return "distance from each other";
    return rule.kind == Rule::Kind::sum ? std::string(info(rule.summed).name) : rule.measure.text;
}

class Extents {
public:
    Extents(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts)
        : set_(set), vocabulary_(vocabulary), doubts_(doubts) {}

    void check() {
        for (const auto &rule : set_.rules) {
            check_depth(rule);
            check_size(rule);
        }
        for (const auto &one : set_.relevance) check_depth(one);
        for (const auto &rule : set_.rules) check_hollow(rule);
    }

private:
    void tell(std::string_view check, const Rule &rule, const std::string &text) {
        doubts_.tell(check, rule.id, rule.where_from, "rules." + rule.id, text);
    }

    /// `where: depth over X`, and the length is limited: nothing limits the depth.
    void check_depth(const Rule &rule) {
        if (rule.kind != Rule::Kind::each && rule.kind != Rule::Kind::sum && rule.kind != Rule::Kind::count)
            return;
        for (const auto &c : rule.where) {
            const auto slot = c.left.lone_quantity();
            if (c.kind != Condition::Kind::comparison || c.edges.size() != 1 ||
                is_maximum(c.edges[0].compare) || !is_one_of(slot, {Quantity::depth, Quantity::height}) ||
                (rule.kind == Rule::Kind::each && rule.measure.uses(*slot)) ||
                (rule.kind == Rule::Kind::sum && slot == slot_of(rule.summed)))
                continue;
            const auto rest = unlimited(rule, rule.subject, asked_by(rule), *slot);
            if (!rest.empty())
                return tell("depth-not-limited", rule,
                            "it speaks of what is " + c.text + " by its " + measure_words(rule) +
                                ", and no rule limits the " + name_of_slot(*slot) + " itself for " + rest);
        }
    }

    /// Held by its length alone, though it goes into the wall and by eye its depth is measured.
    void check_hollow(const Rule &rule) {
        if ((rule.kind != Rule::Kind::each && rule.kind != Rule::Kind::sum) ||
            (measured_by(rule) & into) != 0)
            return;
        for (std::size_t t = 0; t < vocabulary_.size(); ++t)
            if (rule.subject.types[t] && !is_hollow(static_cast<TypeId>(t))) return;
        const auto told = [&](const auto &one) { return doubts_.told("depth-not-limited", one.id); };
        if (told(rule) || std::any_of(set_.relevance.begin(), set_.relevance.end(), told)) return;
        Subject hollows = rule.subject;
        hollows.exams &= ExamSet().set(static_cast<std::size_t>(Exam::VT));
        std::vector<Condition> holding = asked_by(rule);
        for (const Quantity q : {Quantity::depth, Quantity::height}) holding.push_back(larger(q));
        const auto rest = rest_of(rule, hollows, holding, [](const Rule &other, std::size_t c) {
            return speaks(other, c) &&
                   (other.kind == Rule::Kind::presence || (measured_by(other) & into) != 0);
        });
        if (!rest.empty())
            tell("depth-not-limited", rule,
                 "it holds such finds by their " + measure_words(rule) +
                     ", and no rule limits how deep they are for " + rest);
    }
    bool is_hollow(TypeId type) const {
        return std::any_of(std::begin(hollow_types), std::end(hollow_types), [&](const char *wider) {
            return vocabulary_.is_a(type, *vocabulary_.find(wider));
        });
    }

    /// What is shallow does not count, and what counts is held by its length: nothing limits the depth.
    void check_depth(const Relevance &one) {
        for (const auto &c : one.ignore) {
            const auto slot = c.left.lone_quantity();
            if (c.kind != Condition::Kind::comparison || c.edges.empty() ||
                !is_maximum(c.edges.front().compare) || !is_one_of(slot, {Quantity::depth, Quantity::height}))
                continue;
            for (const auto &rule : set_.rules) {
                const Subject both{rule.subject.types & one.subject.types,
                                   rule.subject.exams & one.subject.exams};
                const auto rest = unlimited(rule, both, asked_by(rule), *slot, &one);
                if (!rest.empty())
                    return doubts_.tell("depth-not-limited", one.id, one.where_from, "relevance." + one.id,
                                        "what is more than '" + c.text + "' counts, rule '" + rule.id +
                                            "' holds it by its " + measure_words(rule) +
                                            ", and no rule limits the " + name_of_slot(*slot) +
                                            " itself for " + rest);
            }
        }
    }

    /// The class, and which of the coupons and finds, that have no limit of a depth; empty: they all have.
    std::string unlimited(const Rule &rule, const Subject &subject, std::vector<Condition> holding, Slot slot,
                          const Relevance *relevance = nullptr) const {
        holding.push_back(larger(static_cast<Quantity>(slot)));
        const auto limits = [&](const Rule &other, std::size_t c) {
            return speaks(other, c) && (other.kind == Rule::Kind::presence ||
                                        (other.kind == Rule::Kind::sum && slot_of(other.summed) == slot) ||
                                        (other.kind == Rule::Kind::each && is_maximum(other.compare) &&
                                         other.measure.uses(slot)));
        };
        return rest_of(rule, subject, holding, limits, relevance ? &relevance->classes : nullptr);
    }

    /// How many there may be, how near or how wide, and not how large.
    void check_size(const Rule &rule) {
        if (rule.kind != Rule::Kind::count && rule.kind != Rule::Kind::gap && !of_width_alone(rule)) return;
        std::vector<Condition> holding = asked_by(rule);
        for (const Quantity q : {Quantity::size, Quantity::length, Quantity::area})
            holding.push_back(larger(q));
        if (!of_width_alone(rule))
            for (const Quantity q : {Quantity::width, Quantity::depth, Quantity::height})
                holding.push_back(larger(q));
        const auto rest = rest_of(rule, rule.subject, holding, [](const Rule &other, std::size_t c) {
            return speaks(other, c) && limits_extent(other);
        });
        if (!rest.empty())
            tell("size-not-limited", rule,
                 "it holds the " + measure_words(rule) +
                     " of finds, and no rule limits how large one may be for " + rest);
    }

    /// Finds that this rule gives a number for, and of which none speaks that `limits`: "class A".
    template <class Limits>
    std::string rest_of(const Rule &rule, const Subject &subject, const std::vector<Condition> &holding,
                        Limits limits, const std::vector<bool> *classes = nullptr) const {
        for (std::size_t c = 0; c < set_.classes.size(); ++c) {
            if (!has_number(rule, c) || (classes && !(*classes)[c])) continue;
            std::string out;
            const auto open = [&](const AlikeFinds &finds) {
                if (of_width_alone(rule) && is_root_gap(vocabulary_, finds.type)) return false;
                std::vector<std::vector<Condition>> taken_out;
                for (const auto index : set_.rules_for(finds.type, finds.exam)) {
                    const Rule &other = set_.rules[index];
                    if (&other == &rule || !limits(other, c)) continue;
                    if (doubts_.told("bands-short-of-scope", other.id)) return false;
                    taken_out.push_back(asked_by(other));
                }
                for (const Gap *gap : finds.gaps)
                    if (gap->beside_rules) taken_out.push_back(asked_by(*gap));
                const auto rest = remainder_of(set_, holding, taken_out);
                if (!rest) return false;
                out = "class " + set_.classes[c].id + " (" + vocabulary_[finds.type].name +
                      (rest->empty() ? "" : ", " + *rest) + ")";
                return true;
            };
            if (any_alike(set_, vocabulary_, subject, c, open)) return out;
        }
        return "";
    }

    static std::string name_of_slot(Slot slot) { return std::string(info(static_cast<Quantity>(slot)).name); }

    const CriteriaSet &set_;
    const Vocabulary &vocabulary_;
    Doubts &doubts_;
};

} // namespace

void check_extents(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts) {
    Extents(set, vocabulary, doubts).check();
}

} // namespace beadbook
