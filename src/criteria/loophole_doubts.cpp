// What may reject less than its author thinks.
#include "criteria/doubts.hpp"
#include "criteria/limit_order.hpp"
#include "criteria/own_measure.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// How large such finds may be follows from that measure: a narrow one may be of any length.
bool bounds(Quantity q, OwnMeasure own) {
    switch (q) {
    case Quantity::length:
    case Quantity::area: return own != OwnMeasure::depth && own != OwnMeasure::height;
    case Quantity::size: return true;
    case Quantity::depth:
    case Quantity::height: return own == OwnMeasure::depth || own == OwnMeasure::height;
    case Quantity::width: return own == OwnMeasure::opening;
    case Quantity::angle: return own == OwnMeasure::angle;
    default: return false;
    }
}

bool of_find(const Formula &formula) {
    const auto all = quantities_of(formula);
    return std::any_of(all.begin(), all.end(), [](Quantity q) { return info(q).scope == Scope::indication; });
}

bool has_bound(const Formula &formula, OwnMeasure own) {
    const auto all = quantities_of(formula);
    return std::any_of(all.begin(), all.end(), [&](Quantity q) { return bounds(q, own); });
}

/// `size at most 1/16 in`: beyond some size of the find it does not hold.
bool bounds_size(const Condition &c, OwnMeasure own) {
    if (c.kind != Condition::Kind::comparison) return false;
    return std::any_of(c.edges.begin(), c.edges.end(), [&](const Condition::Edge &edge) {
        const bool left = of_find(c.left), right = of_find(edge.right);
        return left != right && left == is_maximum(edge.compare) &&
               has_bound(left ? c.left : edge.right, own);
    });
}

bool speak_of_one(const Subject &a, const Subject &b) {
    return (a.types & b.types).any() && (a.exams & b.exams).any();
}

class Loopholes {
public:
    Loopholes(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts)
        : set_(set), vocabulary_(vocabulary), doubts_(doubts) {}

    void check() {
        for (std::size_t r = 0; r < set_.rules.size(); ++r) {
            check_together(r);
            check_groups(set_.rules[r]);
        }
        for (const auto &one : set_.relevance) check_relevance(one);
    }

private:
    void tell(std::string_view check, const Rule &rule, const std::string &text) {
        doubts_.tell(check, rule.id, rule.where_from, "rules." + rule.id, text);
    }

    /// The one that is named says nothing of it in its own lines.
    void check_together(std::size_t r) {
        const Rule &rule = set_.rules[r];
        if (rule.only_with && *rule.only_with > r)
            tell("rejects-only-together", rule,
                 "it no longer rejects alone, because rule '" + set_.rules[*rule.only_with].id +
                     "' has 'reject only with: " + rule.id + "'");
    }

    /// Several finds under one name are one to a count.
    void check_groups(const Rule &rule) {
        const auto wider = vocabulary_.find("porosity");
        if (rule.kind != Rule::Kind::count || !wider || !rule.subject.types[*wider]) return;
        std::vector<std::string> groups;
        for (std::size_t t = 0; t < vocabulary_.size(); ++t) {
            const auto type = static_cast<TypeId>(t);
            if (rule.subject.types[t] && vocabulary_[type].is_group() && may_have(rule, type) &&
                !spoken_of(rule, type, *wider))
                groups.push_back(vocabulary_[type].name);
        }
        if (!groups.empty())
            tell("group-counts-as-one", rule,
                 "what is logged as " + listed(groups, "or") +
                     " counts as one here, however many it holds; take it out by 'except', and say elsewhere "
                     "what is allowed of it");
    }
    /// A shape that its name denies is none of it.
    bool may_have(const Rule &rule, TypeId type) const {
        const Shape shape = vocabulary_[type].shape;
        return rule.shape == Shape::unknown || shape == Shape::unknown || shape == rule.shape;
    }
    /// Another rule or a gap speaks of the group, and not of every pore.
    bool spoken_of(const Rule &rule, TypeId group, TypeId wider) const {
        const auto of_group = [&](const Subject &subject) {
            return subject.types[group] && !subject.types[wider] &&
                   (subject.exams & rule.subject.exams).any();
        };
        return std::any_of(set_.rules.begin(), set_.rules.end(),
                           [&](const Rule &other) { return of_group(other.subject); }) ||
               std::any_of(set_.gaps.begin(), set_.gaps.end(),
                           [&](const Gap &gap) { return gap.subject && of_group(*gap.subject); });
    }

    void check_relevance(const Relevance &one) {
        for (std::size_t t = 0; t < vocabulary_.size(); ++t) {
            OwnMeasure own = own_measure(vocabulary_, static_cast<TypeId>(t));
            // Only the eye measures how deep or high a thing is; what else finds it shows its extent.
            if (!one.subject.exams[static_cast<std::size_t>(Exam::VT)]) own = OwnMeasure::extent;
            if (!one.subject.types[t] || std::any_of(one.ignore.begin(), one.ignore.end(),
                                                     [&](const Condition &c) { return bounds_size(c, own); }))
                continue;
            return doubts_.tell("relevance-without-size", one.id, one.where_from, "relevance." + one.id,
                                "'" + one.text + "' names no size of " +
                                    vocabulary_[static_cast<TypeId>(t)].name +
                                    " up to which it does not count: it leaves out any, however large");
        }
        for (const auto &rule : set_.rules) {
            if ((rule.kind != Rule::Kind::sum && rule.kind != Rule::Kind::count) ||
                !speak_of_one(rule.subject, one.subject))
                continue;
            for (std::size_t k = 0; k < rule.limits.size(); ++k)
                if (one.classes[k] &&
                    (rule.limits[k].kind == Limit::Kind::value || rule.limits[k].kind == Limit::Kind::none))
                    return doubts_.tell(
                        "relevance-beside-sum", one.id, one.where_from, "relevance." + one.id,
                        "what it leaves out is not " +
                            std::string(rule.kind == Rule::Kind::count ? "counted" : "added") + " by rule '" +
                            rule.id + "' either, however many there are");
        }
    }

    const CriteriaSet &set_;
    const Vocabulary &vocabulary_;
    Doubts &doubts_;
};

} // namespace

void check_loopholes(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts) {
    Loopholes(set, vocabulary, doubts).check();
}

} // namespace beadbook
