// Rules for a band of coupons, beyond which the set goes on and nothing limits the same measure.
#include "criteria/alike_finds.hpp"
#include "criteria/band.hpp"
#include "criteria/doubts.hpp"
#include "criteria/measured_by.hpp"
#include "criteria/remainder.hpp"
#include "criteria/vocabulary.hpp"
#include "measure/print.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

/// One that compares this quantity with plain numbers.
bool is_band(const Condition &c, Slot slot) { return compares_plainly(c) && c.left.lone_quantity() == slot; }

bool has_limit(const Rule &rule, std::size_t c) {
    const Limit::Kind kind = rule.limits[c].kind;
    return rule.kind != Rule::Kind::combine && rule.kind != Rule::Kind::coupon &&
           (kind == Limit::Kind::value || kind == Limit::Kind::none);
}

/// The band of one quantity that a rule speaks of.
struct Banded {
    const Rule *rule = nullptr;
    Slot slot = 0;
    Band band;
    Measures measures = 0;
};

class BandEnds {
public:
    BandEnds(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts)
        : set_(set), vocabulary_(vocabulary), doubts_(doubts) {
        for (const auto &part : set.scope)
            for (const auto &c : part.when)
                if (const auto slot = c.left.lone_quantity();
                    part.only_if.empty() && slot && is_band(c, *slot))
                    covered_.insert(*slot);
    }

    void check() {
        std::vector<Banded> all;
        for (const auto &rule : set_.rules)
            for (const Slot slot : covered_)
                if (auto one = banded(rule, slot)) all.push_back(*one);
        for (const bool upper : {true, false}) {
            // Of several bands in a row the last one is told of.
            std::stable_sort(all.begin(), all.end(), [&](const Banded &a, const Banded &b) {
                return upper ? a.band.high && (!b.band.high || *a.band.high > *b.band.high)
                             : a.band.low && (!b.band.low || *a.band.low < *b.band.low);
            });
            told_.clear();
            for (const auto &one : all)
                if (upper ? one.band.high.has_value() : one.band.low.has_value()) check_end(one, upper);
        }
    }

private:
    std::optional<Banded> banded(const Rule &rule, Slot slot) const {
        Banded out{&rule, slot, {}, measured_by(rule)};
        for (const auto &c : rule.when)
            if (is_band(c, slot)) out.band.narrow(c);
        // Of one that speaks of no coupon of the scope that is told elsewhere.
        if (out.band.empty() || out.band == Band{} || !remainder_of(set_, asked_by(rule), {}))
            return std::nullopt;
        return out;
    }

    void check_end(const Banded &one, bool upper) {
        const std::string key = std::to_string(one.slot) + "|" + std::to_string(one.measures) +
                                one.rule->subject.types.to_string() + one.rule->subject.exams.to_string();
        if (told_.contains(key) || told_of_.contains(one.rule)) return;
        std::vector<Condition> holding{beyond(one, upper)};
        for (const auto &c : asked_by(*one.rule))
            if (!is_band(c, one.slot)) holding.push_back(c);
        for (std::size_t c = 0; c < set_.classes.size(); ++c) {
            const auto tells = [&](const AlikeFinds &finds) {
                if (!is_unlimited(one, holding, finds)) return false;
                told_.insert(key);
                told_of_.insert(one.rule);
                tell(one, upper, finds.type, c);
                return true;
            };
            if (has_limit(*one.rule, c) && any_alike(set_, vocabulary_, one.rule->subject, c, tells)) return;
        }
    }

    bool is_unlimited(const Banded &one, const std::vector<Condition> &holding,
                      const AlikeFinds &finds) const {
        std::vector<std::vector<Condition>> taken_out;
        std::vector<const Rule *> others;
        for (const auto index : set_.rules_for(finds.type, finds.exam)) {
            const Rule &other = set_.rules[index];
            if (&other == one.rule || other.limits[finds.of_class].kind == Limit::Kind::other) continue;
            if (says_of_it(other, one))
                taken_out.push_back(asked_by(other));
            else if (other.limits[finds.of_class].kind != Limit::Kind::not_said)
                others.push_back(&other);
        }
        const bool told_why = take_out_gaps(finds, taken_out);
        if (!told_why) return remainder_of(set_, holding, taken_out).has_value();
        return std::any_of(others.begin(), others.end(), [&](const Rule *other) {
            return remainder_of(set_, asked_beside(holding, *other), taken_out).has_value();
        });
    }
    /// Of the same measure, or of the find as such; how deep or high one may be holds one of any length.
    static bool says_of_it(const Rule &other, const Banded &one) {
        return other.kind == Rule::Kind::presence || one.rule->kind == Rule::Kind::presence ||
               (measured_by(other) & (one.measures | (one.measures == along ? into : 0))) != 0;
    }

    Condition beyond(const Banded &one, bool upper) const {
        Condition out;
        out.left = formula_of(static_cast<Quantity>(one.slot));
        const Compare compare = upper ? (one.band.high_in ? Compare::over : Compare::at_least)
                                      : (one.band.low_in ? Compare::under : Compare::at_most);
        out.edges = {{compare, Formula::constant(upper ? *one.band.high : *one.band.low,
                                                 info(static_cast<Quantity>(one.slot)).dimension)}};
        return out;
    }

    void tell(const Banded &one, bool upper, TypeId type, std::size_t c) {
        const QuantityInfo &of = info(static_cast<Quantity>(one.slot));
        const std::string end = print(upper ? *one.band.high : *one.band.low, of.dimension, set_.unit);
        doubts_.tell("bands-short-of-scope", one.rule->id, one.rule->where_from, "rules." + one.rule->id,
                     "the bands of " + std::string(of.name) + (upper ? " end at " : " begin at ") + end +
                         ", and the set covers " + (upper ? "more" : "less") + " than that, where class " +
                         set_.classes[c].id + " has no such limit for " + vocabulary_[type].name);
    }

    const CriteriaSet &set_;
    const Vocabulary &vocabulary_;
    Doubts &doubts_;
    std::set<Slot> covered_;     ///< quantities of which the scope names a band
    std::set<std::string> told_; ///< of one side
    std::set<const Rule *> told_of_;
};

} // namespace

void check_band_ends(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts) {
    BandEnds(set, vocabulary, doubts).check();
}

} // namespace beadbook
