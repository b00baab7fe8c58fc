// Limits that differ from those beside them as only a slip of the pen explains.
#include "criteria/doubts.hpp"
#include "criteria/limit_order.hpp"
#include "criteria/measured_by.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::optional<Formula::Op> choice_of(const Limit &limit) {
    if (limit.kind != Limit::Kind::value) return std::nullopt;
    const Formula::Op op = limit.formula.nodes().back().op;
    return op == Formula::Op::least || op == Formula::Op::greatest ? std::optional(op) : std::nullopt;
}

/// The same two parts, of which the other one counts.
bool turned_round(const Limit &one, const Limit &other) {
    if (choice_of(one) == choice_of(other) || !choice_of(one) || !choice_of(other)) return false;
    const auto parts = [](const Limit &limit) {
        const std::size_t of = limit.text.find(" of ");
        return of == std::string::npos ? "" : limit.text.substr(of);
    };
    return !parts(one).empty() && parts(one) == parts(other);
}

/// Without a choice of its own.
bool grows(const Formula &formula, std::size_t at) {
    const Formula::Node &node = formula.nodes()[at];
    switch (node.op) {
    case Formula::Op::constant: return false;
    case Formula::Op::quantity: return true;
    case Formula::Op::table:
    case Formula::Op::blank:
    case Formula::Op::least:
    case Formula::Op::greatest: return false;
    default: return grows(formula, node.left) || grows(formula, node.right);
    }
}
bool is_number(const Formula &formula, std::size_t at) {
    return formula.nodes()[at].op == Formula::Op::constant;
}

/// "T/3 and 6 mm": of two parts one is a number, and the other grows with the wall.
bool is_of_share_and_number(const Limit &limit) {
    const Formula &formula = limit.formula;
    const Formula::Node &last = formula.nodes().back();
    return (grows(formula, last.left) && is_number(formula, last.right)) ||
           (grows(formula, last.right) && is_number(formula, last.left));
}

class Slips {
public:
    Slips(const CriteriaSet &set, const SetBelow &below, Doubts &doubts)
        : set_(set), below_(below), doubts_(doubts) {}

    void check() {
        for (std::size_t r = 0; r < set_.rules.size(); ++r) {
            const Rule &rule = set_.rules[r];
            if (!doubts_.told("unit-of-one-alone", rule.id) && !check_distance(rule) && !check_choice(rule) &&
                !check_siblings(r))
                check_lone(r);
        }
    }

private:
    bool tell(std::string_view check, const Rule &rule, std::size_t c, const std::string &text) {
        doubts_.tell(check, rule.id, rule.where_from, "rules." + rule.id,
                     "its limit for class " + set_.classes[c].id + ", '" + rule.limits[c].text + "', " +
                         text);
        return true;
    }

    /// What the order of the classes refuses is told there.
    bool check_distance(const Rule &rule) {
        if (doubts_.told("limit-over-wall", rule.id) || doubts_.told("limit-beyond-belief", rule.id))
            return false;
        std::vector<std::size_t> with_value;
        for (std::size_t c = 0; c < rule.limits.size(); ++c)
            if (rule.limits[c].kind == Limit::Kind::value) with_value.push_back(c);
        for (std::size_t i = 1; i < with_value.size(); ++i)
            if (out_of_order(rule, with_value[i - 1], with_value[i])) return false;
        for (std::size_t i = 1; i < with_value.size(); ++i) {
            const std::size_t before = with_value[i - 1], c = with_value[i];
            const std::string apart = times_apart(rule.limits[before], rule.limits[c]);
            if (!apart.empty())
                return tell("limits-far-apart", rule, c,
                            "and that for class " + set_.classes[before].id + ", '" +
                                rule.limits[before].text + "', " + apart);
        }
        return check_base(rule);
    }
    /// What the same rule says in the set that this one extends.
    bool check_base(const Rule &rule) {
        const Rule *was = below_.rule(rule.id);
        if (!was || was->kind != rule.kind || was->compare != rule.compare ||
            was->measure.text != rule.measure.text || was->summed != rule.summed)
            return false;
        for (std::size_t c = 0; c < rule.limits.size(); ++c) {
            const auto there = below_.class_of(set_.classes[c].id);
            const std::string apart = there ? times_apart(rule.limits[c], was->limits[*there]) : "";
            if (!apart.empty())
                return tell("limits-far-apart", rule, c,
                            "and that of " + set_.extends + " for class " + below_.set->classes[*there].id +
                                ", '" + was->limits[*there].text + "', " + apart);
        }
        return false;
    }
    bool out_of_order(const Rule &rule, std::size_t strict, std::size_t loose) const {
        return set_.ordered && lets_more_through(rule.limits[strict], rule.limits[loose], rule.compare, {},
                                                 {Unit::inch}) == true;
    }

    /// What fewer of its classes say is doubted; of as many, what lets more through.
    bool check_choice(const Rule &rule) {
        std::vector<std::size_t> least, greatest;
        for (std::size_t c = 0; c < rule.limits.size(); ++c)
            if (const auto op = choice_of(rule.limits[c]))
                (*op == Formula::Op::least ? least : greatest).push_back(c);
        if (least.empty() || greatest.empty()) return false;
        const bool doubt_greatest =
            greatest.size() == least.size() ? is_maximum(rule.compare) : greatest.size() < least.size();
        const std::size_t c = (doubt_greatest ? greatest : least).front();
        const std::size_t other = (doubt_greatest ? least : greatest).front();
        return tell("greater-beside-lesser", rule, c,
                    "takes the " + std::string(doubt_greatest ? "greater" : "lesser") +
                        " of its parts, and that for class " + set_.classes[other].id + ", '" +
                        rule.limits[other].text + "', the " + (doubt_greatest ? "lesser" : "greater") +
                        ": are both meant?");
    }

    /// A rule that has the same two parts, and the other one of them counts.
    bool check_siblings(std::size_t r) {
        const Rule &rule = set_.rules[r];
        if (!first_that_takes(rule, Formula::Op::greatest)) return false;
        for (std::size_t o = 0; o < set_.rules.size(); ++o) {
            const Rule &other = set_.rules[o];
            if (o == r || other.kind != rule.kind || other.compare != rule.compare) continue;
            for (std::size_t c = 0; c < rule.limits.size(); ++c)
                if (choice_of(rule.limits[c]) == Formula::Op::greatest &&
                    turned_round(rule.limits[c], other.limits[c]))
                    return tell("greater-beside-lesser", rule, c,
                                "takes the greater of the parts of which '" + other.limits[c].text +
                                    "' of rule '" + other.id + "' takes the lesser: are both meant?");
        }
        return false;
    }

    /// The only rule of the set that takes the greater of a share of the wall and a number, where others of
    /// the same measure take the lesser.
    void check_lone(std::size_t r) {
        const Rule &rule = set_.rules[r];
        const auto greater = first_that_takes(rule, Formula::Op::greatest);
        if (!greater) return;
        const Rule *lesser = nullptr;
        for (const Rule &other : set_.rules) {
            if (&other == &rule) continue;
            if (first_that_takes(other, Formula::Op::greatest)) return;
            const bool same = other.kind == rule.kind && (measured_by(other) & measured_by(rule)) != 0;
            if (!lesser && same && first_that_takes(other, Formula::Op::least)) lesser = &other;
        }
        if (!lesser) return;
        tell("greater-beside-lesser", rule, *greater,
             "takes the greater of a share and a number, and no other rule does: '" +
                 lesser->limits[*first_that_takes(*lesser, Formula::Op::least)].text + "' of rule '" +
                 lesser->id + "' takes the lesser; is the greater meant?");
    }
    /// Of limits that are at most so.
    static std::optional<std::size_t> first_that_takes(const Rule &rule, Formula::Op op) {
        for (std::size_t c = 0; is_maximum(rule.compare) && c < rule.limits.size(); ++c)
            if (choice_of(rule.limits[c]) == op && is_of_share_and_number(rule.limits[c])) return c;
        return std::nullopt;
    }

    const CriteriaSet &set_;
    const SetBelow &below_;
    Doubts &doubts_;
};

} // namespace

void check_slips(const CriteriaSet &set, const SetBelow &below, Doubts &doubts) {
    Slips(set, below, doubts).check();
}

} // namespace beadbook
