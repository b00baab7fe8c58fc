#include "qualify/cells.hpp"

#include "measure/parse.hpp"

#include <algorithm>

namespace beadbook {
namespace {

constexpr std::size_t most_needs = 200'000;

/// Both ends, each edge between, and one size between each two of these.
std::vector<Exact> cut(const Job::Sizes &sizes, const std::vector<Exact> &edges) {
    std::vector<Exact> points{sizes.from};
    for (const auto &edge : edges)
        if (edge > sizes.from && edge < sizes.to) points.push_back(edge);
    if (sizes.to > sizes.from) points.push_back(sizes.to);
    std::vector<Exact> out;
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (i > 0) out.push_back((points[i - 1] + points[i]) / Exact(2));
        out.push_back(points[i]);
    }
    return out;
}

void add_filter(const WeldFilter &filter, const std::vector<const WeldFilter *> &scope,
                std::vector<EdgeGroup> &out) {
    for (const auto &alternative : filter.alternatives)
        for (const auto &test : alternative)
            for (const auto &edge : test.asks.edges)
                out.push_back({scope, test.trait, {edge.right.constant_limit(edge.compare)}});
}

/// The edge's value for every choice of the sizes that it speaks of.
void add_edge(const Condition::Edge &edge, const TestValues &values, std::vector<Exact> &out) {
    const Formula &formula = edge.right;
    std::vector<Environment::Values> worlds(1);
    for (std::size_t i = word_traits; i < trait_count; ++i) {
        const Quantity q = *info(static_cast<Trait>(i)).size;
        if (!formula.uses(slot_of(q))) continue;
        std::vector<Environment::Values> next;
        for (const auto &world : worlds)
            for (const auto &value : values.sizes[i]) {
                next.push_back(world);
                next.back().set(q, value);
            }
        worlds = std::move(next);
    }
    for (const auto &world : worlds)
        if (const Evaluated value = formula.limit(Environment{world}, edge.compare); value.known())
            out.push_back(value.value);
}

} // namespace

bool possible(const WeldFilter &filter, const Job &job) {
    if (filter.alternatives.empty()) return true;
    return std::any_of(filter.alternatives.begin(), filter.alternatives.end(), [&](const auto &alternative) {
        return std::all_of(alternative.begin(), alternative.end(), [&](const TraitTest &test) {
            if (is_size(test.trait)) return true;
            const auto &words = job.words[index_of(test.trait)];
            return words.empty() || std::any_of(words.begin(), words.end(), [&](const std::string &word) {
                       return test.asks.fits(word);
                   });
        });
    });
}

std::vector<EdgeGroup> edges_of(const RangeRules &rules, const TestValues &values) {
    std::vector<EdgeGroup> out;
    for (const auto &variable : rules.variables) {
        add_filter(variable.work, {&variable.work}, out);
        for (const auto &rule : rules.rules) {
            if (rule.of != variable.of) continue;
            const std::vector<const WeldFilter *> scope{&variable.work, &rule.work};
            add_filter(rule.work, scope, out);
            if (!is_size(rule.of)) continue;
            EdgeGroup group{scope, rule.of, {}};
            for (const auto &edge : rule.band) {
                std::vector<Exact> computed;
                add_edge(edge, values, computed);
                for (const auto &end : computed) group.edges.push_back(rules.ends.compared(edge.compare, end));
                group.edges.insert(group.edges.end(), computed.begin(), computed.end());
            }
            if (rule.kind == RangeRule::Kind::same) group.edges = values.sizes[index_of(rule.of)];
            out.push_back(std::move(group));
        }
    }
    return out;
}

std::vector<EdgeGroup> edges_of(const std::vector<std::vector<VariableRange>> &held) {
    std::vector<EdgeGroup> out;
    for (const auto &range : held)
        for (const auto &one : range) {
            add_filter(one.variable->work, {&one.variable->work}, out);
            for (const auto &part : one.parts) {
                const std::vector<const WeldFilter *> scope{&one.variable->work, &part.rule->work};
                add_filter(part.rule->work, scope, out);
                EdgeGroup group{scope, one.variable->of, {}};
                for (const auto &[compare, edge] : part.edges) group.edges.push_back(edge);
                if (!group.edges.empty()) out.push_back(std::move(group));
            }
        }
    return out;
}

std::vector<Need> needs_of(const std::vector<Job> &jobs, const std::vector<EdgeGroup> &edges,
                           const std::vector<Trait> &traits) {
    std::vector<Need> out;
    for (std::size_t j = 0; j < jobs.size(); ++j) {
        std::vector<Weld> welds(1);
        const auto multiply = [&](const auto &choices, auto set) {
            if (out.size() + welds.size() * choices.size() > most_needs)
                throw InputError("the work falls into too many cases; plan it in parts, or name the stock");
            std::vector<Weld> next;
            for (const auto &weld : welds)
                for (const auto &choice : choices) {
                    next.push_back(weld);
                    set(next.back(), choice);
                }
            welds = std::move(next);
        };
        for (const Trait trait : traits) {
            const std::size_t i = index_of(trait);
            if (!is_size(trait) && !jobs[j].words[i].empty())
                multiply(jobs[j].words[i], [&](Weld &w, const std::string &word) { w.word(trait) = word; });
            if (!is_size(trait) || !jobs[j].sizes[i]) continue;
            std::vector<Exact> cuts;
            for (const auto &group : edges) {
                if (group.trait != trait) continue;
                const bool matters = std::all_of(group.work.begin(), group.work.end(),
                                                 [&](const WeldFilter *f) { return possible(*f, jobs[j]); });
                if (matters) cuts.insert(cuts.end(), group.edges.begin(), group.edges.end());
            }
            std::sort(cuts.begin(), cuts.end());
            cuts.erase(std::unique(cuts.begin(), cuts.end()), cuts.end());
            multiply(cut(*jobs[j].sizes[i], cuts), [&](Weld &w, const Exact &size) { w.size(trait) = size; });
        }
        for (auto &weld : welds) out.push_back({j, std::move(weld)});
    }
    return out;
}

} // namespace beadbook
