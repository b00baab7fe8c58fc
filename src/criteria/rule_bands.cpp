// What conditions let through, as far as they compare one quantity with plain numbers or ask for words.
#include "criteria/doubts.hpp"
#include "measure/print.hpp"

#include <algorithm>
#include <map>

namespace beadbook {
namespace {

/// From `low` to `high`; an absent end is open. `in` says whether the end itself belongs to it.
struct Band {
    std::optional<Exact> low, high;
    bool low_in = false, high_in = false;

    void narrow(Compare compare, const Exact &value) {
        const bool in = compare == Compare::at_least || compare == Compare::at_most;
        if (is_maximum(compare)) {
            if (high && (*high < value || (*high == value && !high_in))) return;
            high = value, high_in = in;
        } else {
            if (low && (*low > value || (*low == value && !low_in))) return;
            low = value, low_in = in;
        }
    }
    bool empty() const { return low && high && (*low > *high || (*low == *high && !(low_in && high_in))); }
    Band within(const Band &other) const {
        Band out = *this;
        if (other.low) out.narrow(other.low_in ? Compare::at_least : Compare::over, *other.low);
        if (other.high) out.narrow(other.high_in ? Compare::at_most : Compare::under, *other.high);
        return out;
    }
    friend bool operator==(const Band &, const Band &) = default;
};

/// All that must hold together. Conditions that are neither a band nor a word are kept as texts.
struct Scoped {
    std::map<Slot, Band> bands;
    std::map<Slot, std::uint64_t> words;
    std::vector<std::string> others;

    void add(const Condition &c) {
        const auto slot = c.left.lone_quantity();
        const bool plain =
            c.kind == Condition::Kind::comparison && slot &&
            std::all_of(c.edges.begin(), c.edges.end(), [](const auto &e) { return e.right.is_constant(); });
        if (c.kind == Condition::Kind::word)
            words.try_emplace(c.slot, ~std::uint64_t{0}).first->second &= c.fitting;
        else if (plain)
            for (const auto &edge : c.edges) bands[*slot].narrow(edge.compare, edge.right.constant_value());
        else
            others.push_back(c.text);
    }
    void sort() { std::sort(others.begin(), others.end()); }
    bool empty() const {
        return std::any_of(bands.begin(), bands.end(), [](const auto &b) { return b.second.empty(); }) ||
               std::any_of(words.begin(), words.end(), [](const auto &w) { return w.second == 0; });
    }
    friend bool operator==(const Scoped &, const Scoped &) = default;
};

Scoped scoped(const std::vector<Condition> &conditions) {
    Scoped out;
    for (const auto &c : conditions) out.add(c);
    out.sort();
    return out;
}

bool meet(const Scoped &a, const Scoped &b) {
    Scoped both = a;
    for (const auto &[slot, band] : b.bands) both.bands[slot] = both.bands[slot].within(band);
    for (const auto &[slot, fitting] : b.words)
        both.words.try_emplace(slot, ~std::uint64_t{0}).first->second &= fitting;
    return !both.empty();
}

void check_list(const std::vector<Condition> &conditions, const std::string &of, Where where,
                const std::string &path, Doubts &doubts) {
    for (const auto &c : conditions)
        if (scoped({c}).empty())
            return doubts.tell("empty-band", of, where, path, "'" + c.text + "' never holds");
    for (std::size_t i = 0; i < conditions.size(); ++i)
        for (std::size_t k = i + 1; k < conditions.size(); ++k)
            if (scoped({conditions[i], conditions[k]}).empty())
                return doubts.tell("never-together", of, where, path,
                                   "'" + conditions[i].text + "' and '" + conditions[k].text +
                                       "' never hold together");
    if (scoped(conditions).empty())
        doubts.tell("never-together", of, where, path, "its conditions never hold all together");
}

std::vector<Condition> all_of(const Rule &rule) {
    std::vector<Condition> out = rule.when;
    out.insert(out.end(), rule.where.begin(), rule.where.end());
    return out;
}

bool same_limits(const Rule &a, const Rule &b) {
    return std::equal(a.limits.begin(), a.limits.end(), b.limits.begin(), b.limits.end(),
                      [](const Limit &x, const Limit &y) { return x.text == y.text; });
}

/// Everything that a rule measures and how, but for its conditions, subject and limits.
std::string measure_of(const Rule &rule) {
    std::string out = std::to_string(static_cast<int>(rule.kind)) + "|" + rule.measure.text + "|" +
                      std::to_string(static_cast<int>(rule.summed)) + "|" +
                      std::to_string(static_cast<int>(rule.compare)) + "|" +
                      std::to_string(static_cast<int>(rule.shape)) + "|";
    for (const auto &window : rule.windows) out += window.text + ";";
    out += "|";
    if (rule.linked) out += rule.linked->text + "|" + std::to_string(rule.least_group);
    return out + (rule.prorated ? "|in proportion" : "");
}

struct Known {
    const Rule *rule;
    Scoped scope;
    std::string measure;
};

/// `not said` keeps open what the other rule lets through: is it meant, or does the rule not apply?
void check_silent_beside(const CriteriaSet &set, const Known &a, const Known &b, Doubts &doubts) {
    const Subject &x = a.rule->subject, &y = b.rule->subject;
    if ((x.exams & y.exams).none() || (x.types & y.types).none() || !meet(a.scope, b.scope)) return;
    for (std::size_t c = 0; c < set.classes.size(); ++c)
        for (const auto &[silent, free] : {std::pair{a.rule, b.rule}, {b.rule, a.rule}})
            if (silent->limits[c].kind == Limit::Kind::not_said && free->limits[c].kind == Limit::Kind::free)
                return doubts.tell(
                    "not-said-beside-no-limit", silent->id, silent->where_from, "rules." + silent->id,
                    "class " + set.classes[c].id + " is 'not said' here, and rule '" + free->id +
                        "' has 'no limit' for the same: it stays open; 'does not apply' says " +
                        "that this rule is not for the class");
}

void check_pair(const Known &a, const Known &b, Doubts &doubts) {
    const Subject &x = a.rule->subject, &y = b.rule->subject;
    if (a.measure != b.measure || (x.exams & y.exams).none() || (x.types & y.types).none()) return;
    if (a.scope.others != b.scope.others || !meet(a.scope, b.scope)) return;
    const std::string path = "rules." + b.rule->id;
    const bool same = same_limits(*a.rule, *b.rule);
    if (same && a.scope == b.scope && x.types == y.types && x.exams == y.exams)
        return doubts.tell("duplicate-rule", b.rule->id, b.rule->where_from, path,
                           "it says what rule '" + a.rule->id + "' says");
    if (same) return;
    for (const auto &[slot, band] : a.scope.bands) {
        const auto other = b.scope.bands.find(slot);
        if (other == b.scope.bands.end() || other->second == band) continue;
        return doubts.tell("overlapping-bands", b.rule->id, b.rule->where_from, path,
                           "its band of " + std::string(info(static_cast<Quantity>(slot)).name) +
                               " overlaps that of rule '" + a.rule->id + "', and their limits differ");
    }
}

std::string said(const Exact &value, Slot slot, Unit unit) {
    return print(value, info(static_cast<Quantity>(slot)).dimension, unit);
}

/// Bands of rules that differ in nothing else, in order: what lies between two of them and in none.
void check_holes(const CriteriaSet &set, Slot slot, std::vector<const Known *> rules, Doubts &doubts) {
    const auto band = [&](const Known *k) { return k->scope.bands.at(slot); };
    std::stable_sort(rules.begin(), rules.end(), [&](const Known *a, const Known *b) {
        const Band x = band(a), y = band(b);
        if (!x.low || !y.low) return !x.low && y.low;
        return *x.low != *y.low ? *x.low < *y.low : x.low_in && !y.low_in;
    });
    Band reach = band(rules.front());
    for (std::size_t i = 1; i < rules.size() && reach.high; ++i) {
        const Band next = band(rules[i]);
        const bool hole = next.low && (*next.low > *reach.high ||
                                       (*next.low == *reach.high && !next.low_in && !reach.high_in));
        if (hole)
            doubts.tell("hole-between-bands", rules[i]->rule->id, rules[i]->rule->where_from,
                        "rules." + rules[i]->rule->id,
                        "no rule speaks of a " + std::string(info(static_cast<Quantity>(slot)).name) +
                            (*next.low == *reach.high ? " of " + said(*next.low, slot, set.unit)
                                                      : " between " + said(*reach.high, slot, set.unit) +
                                                            " and " + said(*next.low, slot, set.unit)) +
                            ", before this one");
        const bool further =
            !next.high || *next.high > *reach.high || (*next.high == *reach.high && next.high_in);
        if (further) reach.high = next.high, reach.high_in = next.high_in;
    }
}

} // namespace

void check_conditions(const CriteriaSet &set, Doubts &doubts) {
    for (const auto &rule : set.rules)
        check_list(all_of(rule), rule.id, rule.where_from, "rules." + rule.id, doubts);
    for (const auto &one : set.relevance) check_list(one.ignore, one.id, {}, "relevance." + one.id, doubts);
    for (const auto &one : set.required) check_list(one.when, one.id, {}, "required exams." + one.id, doubts);
    for (const auto &gap : set.gaps) {
        std::vector<Condition> all = gap.when;
        all.insert(all.end(), gap.where.begin(), gap.where.end());
        check_list(all, gap.text, {}, "gaps", doubts);
    }
}

void check_rule_bands(const CriteriaSet &set, Doubts &doubts) {
    std::vector<Known> known;
    for (const auto &rule : set.rules)
        if (rule.kind != Rule::Kind::combine && rule.kind != Rule::Kind::coupon)
            known.push_back({&rule, scoped(all_of(rule)), measure_of(rule)});
    for (std::size_t b = 1; b < known.size(); ++b)
        for (std::size_t a = 0; a < b; ++a) {
            check_pair(known[a], known[b], doubts);
            check_silent_beside(set, known[a], known[b], doubts);
        }
    for (std::size_t first = 0; first < known.size(); ++first)
        for (const auto &[slot, band] : known[first].scope.bands) {
            const auto alike = [&, slot = slot](const Known &one) {
                Scoped x = known[first].scope, y = one.scope;
                if (!y.bands.contains(slot)) return false;
                x.bands.erase(slot), y.bands.erase(slot);
                const Subject &s = known[first].rule->subject, &t = one.rule->subject;
                return known[first].measure == one.measure && s.types == t.types && s.exams == t.exams &&
                       x == y;
            };
            std::vector<const Known *> rules;
            bool told = false; // with an earlier rule of the same kind
            for (std::size_t k = 0; k < known.size(); ++k) {
                if (!alike(known[k])) continue;
                told = told || k < first;
                rules.push_back(&known[k]);
            }
            if (!told && rules.size() > 1) check_holes(set, slot, std::move(rules), doubts);
        }
}

} // namespace beadbook
