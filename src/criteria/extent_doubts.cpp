// Finds of which something is limited, and not how large, how deep or how high they are.
#include "criteria/alike_finds.hpp"
#include "criteria/doubts.hpp"
#include "criteria/into_wall.hpp"
#include "criteria/measured_by.hpp"
#include "criteria/own_measure.hpp"
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

bool of_depth_alone(const Rule &rule) {
    const Measures measures = measured_by(rule);
    return rule.kind == Rule::Kind::each && measures != 0 && (measures & ~into) == 0;
}

bool uses(const Rule &rule, Quantity q) {
    return rule.kind == Rule::Kind::sum ? rule.summed == q : rule.measure.uses(slot_of(q));
}

/// One alone is no such group.
bool of_several(const Rule &rule) { return rule.linked && rule.least_group > 1; }

/// How deep a pore goes holds none of any length.
bool limits_extent(const Rule &rule, OwnMeasure own) {
    if (rule.kind == Rule::Kind::presence) return true;
    if (of_several(rule)) return false;
    const Measures holding = own == OwnMeasure::extent ? along : along | into;
    return !of_width_alone(rule) && (measured_by(rule) & holding) != 0;
}

/// Of what is worse the deeper it goes, or the higher it stands; the largest dimension is no less than that.
bool limits_rise(const Rule &rule) {
    return rule.kind == Rule::Kind::presence || (measured_by(rule) & into) != 0 || uses(rule, Quantity::size);
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
        for (const auto &rule : set_.rules) {
            check_rise(rule);
            check_dimension(rule);
            check_side(rule);
        }
        for (const auto &rule : set_.rules) check_fillets(rule);
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

    /// Held by its length alone, though it goes into the wall or stands out of it, and by eye that is
    /// measured.
    void check_rise(const Rule &rule) {
        if ((rule.kind != Rule::Kind::each && rule.kind != Rule::Kind::sum) || limits_rise(rule)) return;
        for (std::size_t t = 0; t < vocabulary_.size(); ++t)
            if (rule.subject.types[t] && !is_own(t, OwnMeasure::depth) && !is_own(t, OwnMeasure::height))
                return;
        for (const OwnMeasure own : {OwnMeasure::depth, OwnMeasure::height}) {
            const bool hollow = own == OwnMeasure::depth;
            const char *check = hollow ? "depth-not-limited" : "height-not-limited";
            const auto told = [&](const auto &one) { return doubts_.told(check, one.id); };
            if (told(rule) || std::any_of(set_.relevance.begin(), set_.relevance.end(), told)) continue;
            Subject such = rule.subject;
            such.exams &= ExamSet().set(static_cast<std::size_t>(Exam::VT));
            for (std::size_t t = 0; t < vocabulary_.size(); ++t)
                such.types[t] = such.types[t] && is_own(t, own);
            std::vector<Condition> holding = asked_by(rule);
            for (const Quantity q : {Quantity::depth, Quantity::height, Quantity::size})
                holding.push_back(larger(q));
            const auto rest = rest_of(rule, such, holding, [](const Rule &other, std::size_t c, OwnMeasure) {
                return speaks(other, c) && limits_rise(other);
            });
            if (!rest.empty())
                tell(check, rule,
                     "it holds such finds by their " + measure_words(rule) + ", and no rule limits how " +
                         (hollow ? "deep" : "high") + " they are for " + rest);
        }
    }
    /// The height of an undercut: nobody measures that, as it is the depth by which it is judged.
    void check_side(const Rule &rule) {
        if ((rule.kind != Rule::Kind::each && rule.kind != Rule::Kind::sum) ||
            doubts_.told("limit-turned-round", rule.id))
            return;
        const std::pair<OwnMeasure, Quantity> sides[] = {{OwnMeasure::depth, Quantity::depth},
                                                         {OwnMeasure::height, Quantity::height},
                                                         {OwnMeasure::angle, Quantity::angle}};
        for (const auto &[own, own_side] : sides)
            for (const auto &[other, side] : sides)
                for (std::size_t t = 0; t < vocabulary_.size(); ++t)
                    if (own != other && rule.subject.types[t] && is_own(t, own) && uses(rule, side) &&
                        !uses(rule, own_side))
                        return tell("measure-of-another", rule,
                                    "it measures the " + std::string(info(side).name) + " of " +
                                        vocabulary_[static_cast<TypeId>(t)].name +
                                        ", and what is measured of that is its " +
                                        std::string(info(own_side).name) + ": such finds stay cannot say");
    }
    bool is_own(std::size_t type, OwnMeasure own) const {
        return own_measure(vocabulary_, static_cast<TypeId>(type)) == own;
    }

    /// Of a dimension that is checked only its size tells anything, and only where somebody measured it.
    void check_dimension(const Rule &rule) {
        if (rule.kind != Rule::Kind::each) return;
        std::string name;
        for (std::size_t t = 0; t < vocabulary_.size() && name.empty(); ++t)
            if (rule.subject.types[t] && is_own(t, OwnMeasure::dimension))
                name = vocabulary_[static_cast<TypeId>(t)].name;
        if (name.empty()) return;
        const auto of_size = [](const Condition &c) { return c.left.uses(slot_of(Quantity::size)); };
        if (!uses(rule, Quantity::size) && std::none_of(rule.where.begin(), rule.where.end(), of_size))
            tell("size-not-limited", rule,
                 "it measures the " + measure_words(rule) + " of a " + name +
                     ", which is how long it is so along the weld: how large it is, is its 'size'");
        else if (!is_maximum(rule.compare))
            check_measured(rule, name);
    }
    /// A least size, and a coupon of which nobody measured it is accepted.
    void check_measured(const Rule &rule, const std::string &name) {
        for (std::size_t c = 0; c < set_.classes.size(); ++c) {
            if (!has_number(rule, c)) continue;
            std::vector<std::vector<Condition>> taken_out;
            for (const auto &other : set_.rules)
                if (other.must_be_measured && speaks(other, c) &&
                    (other.subject.types & rule.subject.types).any() &&
                    (other.subject.exams & rule.subject.exams).any())
                    taken_out.push_back(other.when);
            for (const auto &gap : set_.gaps)
                if (gap.beside_rules && gap.classes[c] && gap.where.empty() &&
                    (gap.subject->types & rule.subject.types).any())
                    taken_out.push_back(gap.when);
            const auto rest = remainder_of(set_, rule.when, taken_out);
            if (rest)
                return tell("need-not-be-measured", rule,
                            "it asks for a least " + name + " for class " + set_.classes[c].id +
                                (rest->empty() ? "" : ", " + *rest) +
                                ", and a coupon of which nobody measured it is accepted: 'must be "
                                "measured: yes' asks for it");
        }
    }

    /// A least size that some fillets alone are asked for: any other one is accepted of which nobody measured
    /// how large it is.
    void check_fillets(const Rule &rule) {
        if (!asks_least_of_fillet(rule) || doubts_.told("need-not-be-measured", rule.id) || fillets_told_)
            return;
        Condition fillet;
        fillet.kind = Condition::Kind::word;
        fillet.slot = static_cast<Slot>(Fact::joint);
        fillet.fitting = std::uint64_t{1} << word_index(info(Fact::joint), "fillet");
        fillet.subject = "joint";
        fillet.words = {"fillet"};
        fillet.text = "joint is fillet";
        const TypeSet sizes =
            TypeSet().set(*vocabulary_.find("fillet size")).set(*vocabulary_.find("throat"));
        for (std::size_t c = 0; c < set_.classes.size(); ++c) {
            std::vector<std::vector<Condition>> taken_out;
            for (const auto &other : set_.rules)
                if (other.must_be_measured && speaks(other, c) && (other.subject.types & sizes).any())
                    taken_out.push_back(other.when);
            for (const auto &gap : set_.gaps)
                if (gap.beside_rules && gap.classes[c] && gap.where.empty() && gap.subject &&
                    (gap.subject->types & sizes).any())
                    taken_out.push_back(gap.when);
            const auto rest = remainder_of(set_, {fillet}, taken_out);
            if (!rest) continue;
            fillets_told_ = true;
            return tell("need-not-be-measured", rule,
                        "it asks for a least size, and of a fillet for class " + set_.classes[c].id +
                            (rest->empty() ? "" : " where " + *rest) +
                            " no rule does: one of which nobody measured it is accepted there");
        }
    }
    bool asks_least_of_fillet(const Rule &rule) const {
        return rule.kind == Rule::Kind::each && !is_maximum(rule.compare) &&
               only_of(rule.subject.types, {"fillet size", "throat"});
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
        const auto limits = [&](const Rule &other, std::size_t c, OwnMeasure) {
            return speaks(other, c) && (other.kind == Rule::Kind::presence ||
                                        (other.kind == Rule::Kind::sum && slot_of(other.summed) == slot) ||
                                        (other.kind == Rule::Kind::each && is_maximum(other.compare) &&
                                         other.measure.uses(slot)));
        };
        return rest_of(rule, subject, holding, limits, relevance ? &relevance->classes : nullptr);
    }

    /// How many there may be, how near, how wide or how deep, and not how large.
    void check_size(const Rule &rule) {
        const bool of_one_side = of_width_alone(rule) || of_depth_alone(rule);
        const bool of_groups =
            rule.kind == Rule::Kind::sum && rule.linked && !doubts_.told("group-never-met", rule.id);
        if (rule.kind != Rule::Kind::count && rule.kind != Rule::Kind::gap && !of_one_side && !of_groups)
            return;
        std::vector<Condition> holding = asked_by(rule);
        for (const Quantity q : {Quantity::size, Quantity::length, Quantity::area})
            holding.push_back(larger(q));
        if (!of_one_side)
            for (const Quantity q : {Quantity::width, Quantity::depth, Quantity::height})
                holding.push_back(larger(q));
        const bool counted_too = of_groups && !of_several(rule);
        const auto rest =
            rest_of(rule, rule.subject, holding, [&](const Rule &other, std::size_t c, OwnMeasure own) {
                const bool counts = counted_too && other.kind == Rule::Kind::count && !other.linked;
                return speaks(other, c) && (counts || limits_extent(other, own));
            });
        if (rest.empty() || doubts_.told("cracks-pass", rule.id)) return;
        if (counted_too)
            return tell("groups-alone", rule,
                        "no other rule limits how large or how many such finds are, and it adds those in "
                        "line alone: what lies farther apart passes, however much it is, for " +
                            rest);
        tell("size-not-limited", rule,
             of_several(rule)
                 ? "it holds groups of " + std::to_string(rule.least_group) +
                       " or more in line, and no rule limits how large a single one may be for " + rest
                 : "it holds the " + measure_words(rule) +
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
                const OwnMeasure own = own_measure(vocabulary_, finds.type);
                if (of_width_alone(rule) && own == OwnMeasure::opening) return false;
                if (of_depth_alone(rule) && own != OwnMeasure::extent) return false;
                std::vector<std::vector<Condition>> taken_out;
                for (const auto index : set_.rules_for(finds.type, finds.exam)) {
                    const Rule &other = set_.rules[index];
                    if (&other == &rule || !limits(other, c, own)) continue;
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
    bool fillets_told_ = false; ///< of one rule is enough
};

} // namespace

void check_extents(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts) {
    Extents(set, vocabulary, doubts).check();
}

} // namespace beadbook
