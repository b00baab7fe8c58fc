#include "qualify/range.hpp"

#include "measure/print.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

void add(std::vector<Lack> &lacks, Lack lack) {
    if (std::find(lacks.begin(), lacks.end(), lack) == lacks.end()) lacks.push_back(lack);
}

Truth holds(const TraitTest &test, const Weld &weld) {
    if (!weld.knows(test.trait)) return Truth::unknown;
    if (!is_size(test.trait)) return test.asks.fits(weld.word(test.trait)) ? Truth::yes : Truth::no;
    const Exact &value = *weld.size(test.trait);
    const bool all =
        std::all_of(test.asks.edges.begin(), test.asks.edges.end(), [&](const Condition::Edge &edge) {
            return beadbook::holds(value, edge.compare, edge.right.constant_limit(edge.compare));
        });
    return all ? Truth::yes : Truth::no;
}

/// Lacks are only told of filters that stay open for want of them.
Truth passes(const WeldFilter &filter, const Weld &weld, Lack::Of of, std::vector<Lack> &lacks) {
    if (filter.alternatives.empty()) return Truth::yes;
    Truth any = Truth::no;
    std::vector<Lack> open;
    for (const auto &alternative : filter.alternatives) {
        Truth all = Truth::yes;
        std::vector<Lack> missing;
        for (const auto &test : alternative) {
            const Truth one = holds(test, weld);
            if (one == Truth::unknown) add(missing, {test.trait, of});
            all = both(all, one);
        }
        if (all == Truth::unknown)
            for (const auto &lack : missing) add(open, lack);
        any = std::max(any, all);
    }
    if (any == Truth::unknown)
        for (const auto &lack : open) add(lacks, lack);
    return any;
}

Environment::Values values_of(const Weld &weld) {
    Environment::Values out;
    for (std::size_t i = word_traits; i < trait_count; ++i)
        if (const auto &size = weld.size(static_cast<Trait>(i)))
            out.set(*info(static_cast<Trait>(i)).size, *size);
    return out;
}

/// A size of the test itself is no computed end: rounding it could take the test's own weld out of its range.
bool is_own_size(const Formula &end, const Weld &test, const Exact &computed) {
    for (std::size_t i = word_traits; i < trait_count; ++i) {
        const auto trait = static_cast<Trait>(i);
        if (end.uses(slot_of(*info(trait).size)) && test.size(trait) == computed) return true;
    }
    return false;
}

Exact compared_end(const EndComparison &ends, const RangeRule &rule, const Condition::Edge &edge,
                   const Weld &test, const Exact &computed) {
    const bool length = info(*info(rule.of).size).dimension == Dimension::length;
    if (!length || edge.right.is_constant() || is_own_size(edge.right, test, computed)) return computed;
    return ends.compared(edge.compare, computed);
}

std::optional<RangePart> part_of(const RangeRules &rules, const RangeRule &rule, const Weld &test,
                                 const Environment::Values &values) {
    RangePart out;
    out.rule = &rule;
    out.applies = passes(rule.test, test, Lack::Of::test, out.lacks);
    if (out.applies == Truth::no) return std::nullopt;
    const auto lack = [&](Trait trait, Lack::Of of = Lack::Of::test) {
        add(out.lacks, {trait, of});
        out.applies = Truth::unknown;
    };
    switch (rule.kind) {
    case RangeRule::Kind::any: out.any = true; break;
    case RangeRule::Kind::unread:
        out.any = true;
        lack(rule.of, Lack::Of::rules);
        break;
    case RangeRule::Kind::same:
        if (!test.knows(rule.of))
            lack(rule.of);
        else if (is_size(rule.of)) {
            out.computed = {*test.size(rule.of), *test.size(rule.of)};
            out.edges = {{Compare::at_least, out.computed[0]}, {Compare::at_most, out.computed[1]}};
        } else
            out.words = {test.word(rule.of)};
        break;
    case RangeRule::Kind::words:
        out.words = rule.words;
        if (rule.by.empty()) break;
        if (!test.knows(rule.of)) {
            lack(rule.of);
        } else {
            const auto found = rule.by.find(test.word(rule.of));
            if (found == rule.by.end()) return std::nullopt;
            out.words = found->second;
        }
        break;
    case RangeRule::Kind::band:
        for (const auto &edge : rule.band) {
            const Evaluated value = edge.right.limit(Environment{values}, edge.compare);
            if (value.known()) {
                out.edges.emplace_back(edge.compare, compared_end(rules.ends, rule, edge, test, value.value));
                out.computed.push_back(value.value);
                continue;
            }
            for (std::size_t i = word_traits; i < trait_count; ++i) {
                const auto trait = static_cast<Trait>(i);
                if (value.missing.has(lack_of(*info(trait).size))) lack(trait);
            }
            out.applies = Truth::unknown;
        }
        break;
    }
    return out;
}

} // namespace

void add_traits(const WeldFilter &filter, std::set<Trait> &out) {
    for (const auto &alternative : filter.alternatives)
        for (const auto &test : alternative) out.insert(test.trait);
}

std::set<Trait> work_traits_of(const RangeRules &rules, const Variable &variable) {
    std::set<Trait> out{variable.of};
    add_traits(variable.work, out);
    for (const auto *rule : rules.rules_of(variable.of)) add_traits(rule->work, out);
    return out;
}

Truth passes(const WeldFilter &filter, const Weld &weld) {
    std::vector<Lack> ignored;
    return passes(filter, weld, Lack::Of::test, ignored);
}

void check_test_word(const RangeRules &rules, Trait trait, const Weld &test) {
    std::set<Trait> asked; // a word that is not known passes no filter, so what asks for it is silent then
    for (const auto &exam : rules.exams) add_traits(exam.test, asked);
    for (const auto &rule : rules.rules) add_traits(rule.test, asked);
    const bool bears = std::any_of(rules.rules.begin(), rules.rules.end(), [&](const RangeRule &rule) {
        return rule.of == trait && passes(rule.test, test) != Truth::no;
    });
    if (bears || asked.contains(trait)) check_word(rules, trait, true, test.word(trait));
}

std::string name_of(const Lack &lack) {
    const std::string name(info(lack.trait).name);
    switch (lack.of) {
    case Lack::Of::test: return "the test's " + name;
    case Lack::Of::work: return "the work's " + name;
    case Lack::Of::rules: break;
    }
    return "what the rules say of " + name;
}

Exact EndComparison::compared(Compare compare, const Exact &computed) const {
    if (kind == Kind::absolute) return computed;
    const Exact rounded = Exact::whole((computed / place).rounded_to_even()) * place;
    if (kind == Kind::rounded) return rounded;
    return is_maximum(compare) ? std::max(computed, rounded) : std::min(computed, rounded);
}

bool RangePart::rounded() const {
    for (std::size_t i = 0; i < edges.size(); ++i)
        if (edges[i].second != computed[i]) return true;
    return false;
}

Truth RangePart::allows(Trait of, const Weld &work) const {
    if (any) return applies;
    if (!work.knows(of)) return Truth::unknown;
    if (is_size(of)) {
        const Exact value = *work.size(of);
        for (const auto &[compare, edge] : edges)
            if (!holds(value, compare, edge)) return Truth::no;
        return applies;
    }
    if (words.empty() && applies == Truth::unknown) return Truth::unknown;
    return std::find(words.begin(), words.end(), work.word(of)) != words.end() ? applies : Truth::no;
}

VariableRange range_of(const RangeRules &rules, const Variable &variable, const Weld &test) {
    VariableRange out{&variable, {}};
    const Environment::Values values = values_of(test);
    for (const auto *rule : rules.rules_of(variable.of))
        if (auto part = part_of(rules, *rule, test, values)) out.parts.push_back(std::move(*part));
    return out;
}

std::vector<VariableRange> range_of(const RangeRules &rules, const Weld &test) {
    std::vector<VariableRange> out;
    for (const auto &variable : rules.variables) out.push_back(range_of(rules, variable, test));
    for (const auto &one : rules.unread) out.push_back(range_of(rules, one.variable, test));
    return out;
}

bool may_matter(const std::vector<VariableRange> &range, const Variable &variable) {
    const auto may_have = [&](const TraitTest &test) {
        const auto one = std::find_if(range.begin(), range.end(), [&](const VariableRange &r) {
            return r.variable->of == test.trait && r.variable->work.alternatives.empty();
        });
        if (is_size(test.trait) || one == range.end()) return true;
        return std::any_of(one->parts.begin(), one->parts.end(), [&](const RangePart &part) {
            return part.any || part.applies == Truth::unknown ||
                   std::any_of(part.words.begin(), part.words.end(),
                               [&](const std::string &word) { return test.asks.fits(word); });
        });
    };
    const auto &any = variable.work.alternatives;
    return any.empty() || std::any_of(any.begin(), any.end(), [&](const auto &all) {
               return std::all_of(all.begin(), all.end(), may_have);
           });
}

std::optional<VariableCover> cover_of(const VariableRange &range, const Weld &work) {
    VariableCover out;
    out.variable = range.variable;
    std::vector<Lack> scope_lacks;
    const Truth asked = passes(range.variable->work, work, Lack::Of::work, scope_lacks);
    if (asked == Truth::no) return std::nullopt;
    for (const auto &part : range.parts) {
        std::vector<Lack> lacks = part.lacks;
        Truth one = passes(part.rule->work, work, Lack::Of::work, lacks);
        if (one == Truth::no) continue;
        const Truth allowed = part.allows(range.variable->of, work);
        if (allowed == Truth::unknown && !part.any && !work.knows(range.variable->of))
            add(lacks, {range.variable->of, Lack::Of::work});
        one = both(one, allowed);
        if (one == Truth::yes) return VariableCover{range.variable, one, part.rule, {}};
        if (one == Truth::no) continue;
        out.covered = Truth::unknown;
        for (const auto &lack : lacks) add(out.lacks, lack);
    }
    // Whether this variable limits the work at all is not known: it may not.
    if (asked == Truth::unknown) {
        out.covered = Truth::unknown;
        for (const auto &lack : scope_lacks) add(out.lacks, lack);
    }
    return out;
}

Cover covers(const std::vector<VariableRange> &range, const Weld &work) {
    Cover out;
    for (const auto &one : range) {
        auto cover = cover_of(one, work);
        if (!cover) continue;
        out.covered = both(out.covered, cover->covered);
        out.variables.push_back(std::move(*cover));
    }
    return out;
}

Cover covers(const RangeRules &rules, const Weld &test, const Weld &work) {
    return covers(range_of(rules, test), work);
}

std::string print(Trait trait, const Exact &value, Unit unit) {
    return print_exact(value, info(*info(trait).size).dimension, unit);
}

std::string print(const RangePart &part, Unit unit) {
    if (part.rule->kind == RangeRule::Kind::unread) return "else not known: " + part.rule->text;
    if (part.any) return "any";
    if (part.rule->kind == RangeRule::Kind::same && part.edges.size() == 2)
        return print(part.rule->of, part.edges.front().second, unit);
    const bool whole =
        part.edges.size() == part.rule->band.size() || part.rule->kind == RangeRule::Kind::same;
    if (!whole || (part.edges.empty() && part.words.empty())) return part.rule->text;
    if (!is_size(part.rule->of)) return listed(part.words);
    std::string out;
    for (std::size_t i = 0; i < part.edges.size(); ++i) {
        const auto &[compare, value] = part.edges[i];
        const bool second = !out.empty();
        const std::string_view word = compare == Compare::at_least
                                          ? (part.edges.size() > 1 ? "from" : "at least")
                                      : compare == Compare::at_most ? (second ? "to" : "up to")
                                                                    : name_of(compare);
        out += (second ? " " : "") + std::string(word) + " " + print(part.rule->of, value, unit);
        if (part.computed[i] != value)
            out += " (computed " + print(part.rule->of, part.computed[i], unit) + ")";
    }
    return out;
}

std::string print(const Weld &weld, Unit unit) {
    std::string out;
    for (std::size_t i = 0; i < trait_count; ++i) {
        const auto trait = static_cast<Trait>(i);
        if (!weld.knows(trait)) continue;
        if (!out.empty()) out += ", ";
        // Words that say little alone are told with their trait.
        const bool plain = i <= index_of(Trait::position);
        if (!plain) out += std::string(info(trait).name) + " ";
        out += is_size(trait) ? print(trait, *weld.size(trait), unit) : weld.word(trait);
    }
    return out;
}

} // namespace beadbook
