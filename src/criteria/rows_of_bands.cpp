// Rules that differ in one band only: what lies between two bands and in none, and limits that fall.
#include "criteria/limit_order.hpp"
#include "criteria/scoped_rule.hpp"
#include "measure/print.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// What it speaks of and measures, but for the band of one quantity.
std::string all_but_band(const ScopedRule &one, Slot but) {
    const auto number = [](const Exact &value) {
        return std::to_string(static_cast<long long>(value.num())) + "/" + std::to_string(value.den());
    };
    std::string out = std::to_string(but) + "|" + one.measure + "|" + one.rule->subject.types.to_string() +
                      one.rule->subject.exams.to_string();
    for (const auto &[slot, band] : one.scope.bands) {
        if (slot == but) continue;
        out += "|" + std::to_string(slot) + (band.low_in ? "[" : "(") + (band.low ? number(*band.low) : "") +
               "," + (band.high ? number(*band.high) : "") + (band.high_in ? "]" : ")");
    }
    for (const auto &[slot, fitting] : one.scope.words)
        out += "|" + std::to_string(slot) + "=" + std::to_string(fitting);
    for (const auto &text : one.scope.others) out += "|" + text;
    return out;
}

/// The rules of one row, by where their bands begin.
class RowOfBands {
public:
    RowOfBands(const CriteriaSet &set, Slot slot, std::vector<const ScopedRule *> rules, Doubts &doubts)
        : set_(set), slot_(slot), rules_(std::move(rules)), doubts_(doubts) {
        std::stable_sort(rules_.begin(), rules_.end(), [&](const ScopedRule *a, const ScopedRule *b) {
            const Band x = band(a), y = band(b);
            if (!x.low || !y.low) return !x.low && y.low;
            return *x.low != *y.low ? *x.low < *y.low : x.low_in && !y.low_in;
        });
    }

    void check() {
        check_holes();
        if (is_one_of(slot_, {Quantity::thinner, Quantity::thicker, Quantity::weld_thickness}))
            for (std::size_t i = 1; i < rules_.size(); ++i) check_fall(*rules_[i - 1]->rule, *rules_[i]);
    }

private:
    Band band(const ScopedRule *one) const { return one->scope.bands.at(slot_); }
    std::string said(const Exact &value) const {
        return print(value, info(static_cast<Quantity>(slot_)).dimension, set_.unit);
    }
    void tell(std::string_view check, const Rule &rule, const std::string &text) {
        doubts_.tell(check, rule.id, rule.where_from, "rules." + rule.id, text);
    }

    void check_holes() {
        Band reach = band(rules_.front());
        for (std::size_t i = 1; i < rules_.size() && reach.high; ++i) {
            const Band next = band(rules_[i]);
            const bool hole = next.low && (*next.low > *reach.high ||
                                           (*next.low == *reach.high && !next.low_in && !reach.high_in));
            if (hole)
                tell("hole-between-bands", *rules_[i]->rule,
                     "no rule speaks of a " + std::string(info(static_cast<Quantity>(slot_)).name) +
                         (*next.low == *reach.high
                              ? " of " + said(*next.low)
                              : " between " + said(*reach.high) + " and " + said(*next.low)) +
                         ", before this one");
            const bool further =
                !next.high || *next.high > *reach.high || (*next.high == *reach.high && next.high_in);
            if (further) reach.high = next.high, reach.high_in = next.high_in;
        }
    }

    /// As of a table: where the thicker band begins, its limit is under that of the band before.
    void check_fall(const Rule &thin, const ScopedRule &thicker) {
        const Rule &thick = *thicker.rule;
        const auto edge = band(&thicker).low;
        if (!edge) return;
        for (std::size_t c = 0; c < set_.classes.size(); ++c) {
            const Limit &below = thin.limits[c], &above = thick.limits[c];
            if (below.kind != Limit::Kind::value || above.kind != Limit::Kind::value) continue;
            if (is_maximum(thick.compare) && jumps_at(*edge, slot_, below.formula, above.formula, most_jump))
                return tell("table-jumps", thick,
                            "from a " + std::string(info(static_cast<Quantity>(slot_)).name) + " of " +
                                said(*edge) + " on class " + set_.classes[c].id + " has '" + above.text +
                                "', which is more than " + std::to_string(most_jump) + " times the '" +
                                below.text + "' of rule '" + thin.id +
                                "' for thinner walls: is the number right?");
            if (!falls_at(*edge, slot_, below.formula, above.formula, Unit::inch) ||
                !falls_at(*edge, slot_, below.formula, above.formula, Unit::millimetre))
                continue;
            return tell("bands-fall", thick,
                        "from a " + std::string(info(static_cast<Quantity>(slot_)).name) + " of " +
                            said(*edge) + " on class " + set_.classes[c].id + " has '" + above.text +
                            "', which is less than the '" + below.text + "' of rule '" + thin.id +
                            "' for thinner walls: is a thicker wall meant to have the smaller number? If the "
                            "two are exchanged, put each where it belongs");
        }
    }

    const CriteriaSet &set_;
    Slot slot_;
    std::vector<const ScopedRule *> rules_;
    Doubts &doubts_;
};

} // namespace

void check_rows_of_bands(const CriteriaSet &set, const std::vector<ScopedRule> &rules, Doubts &doubts) {
    std::map<std::string, std::vector<const ScopedRule *>> alike;
    for (const auto &one : rules)
        for (const auto &[slot, band] : one.scope.bands) alike[all_but_band(one, slot)].push_back(&one);
    // In the order in which the first of each row stands.
    for (const auto &one : rules)
        for (const auto &[slot, band] : one.scope.bands)
            if (const auto &row = alike.at(all_but_band(one, slot)); row.size() > 1 && row.front() == &one)
                RowOfBands(set, slot, row, doubts).check();
}

} // namespace beadbook
