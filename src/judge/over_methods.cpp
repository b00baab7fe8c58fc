#include "judge/over_methods.hpp"

#include "judge/whole_coupon.hpp"

#include <algorithm>

namespace beadbook {
namespace {

bool holds_several(const Rule &rule) {
    return rule.kind == Rule::Kind::sum || rule.kind == Rule::Kind::count || rule.kind == Rule::Kind::gap;
}

/// One that rejects only together with another says nothing without it.
bool bears_on_several(const CriteriaSet &set, const Rule &rule) {
    return holds_several(rule) || (rule.only_with && holds_several(set.rules[*rule.only_with]));
}

} // namespace

std::vector<std::uint16_t> rules_over_methods(const BoundSet &bound,
                                              const std::vector<Indication> &indications) {
    const auto of_one_method = [&](const Indication &i) { return i.exam == indications.front().exam; };
    if (std::all_of(indications.begin(), indications.end(), of_one_method)) return {};
    std::vector<ExamSet> found_by(bound.set.rules.size());
    for (const auto &one : indications)
        for (const std::uint16_t r : bound.set.rules_for(one.type, one.exam))
            found_by[r].set(static_cast<std::size_t>(one.exam));
    std::vector<std::uint16_t> out;
    for (std::size_t r = 0; r < found_by.size(); ++r) {
        const Rule &rule = bound.set.rules[r];
        const bool several = found_by[r].count() > 1 ||
                             (rule.only_with && (found_by[r] | found_by[*rule.only_with]).count() > 1);
        if (several && bears_on_several(bound.set, rule) && bound.rule(r).applies.truth != Truth::no)
            out.push_back(static_cast<std::uint16_t>(r));
    }
    return out;
}

Evaluation taken_together(const Evaluation &apart, const std::vector<std::uint16_t> &rules) {
    Evaluation e(apart.bound, apart.indications, apart.items, Methods::together);
    std::vector<std::vector<Candidate>> candidates(apart.set.rules.size());
    for (std::uint32_t i = 0; i < e.items.size(); ++i) {
        if (e.items[i].counts == Truth::no) continue;
        for (const std::size_t m : e.items[i].members) {
            const Indication &found = e.indications[m];
            for (const std::uint16_t r : e.set.rules_for(found.type, found.exam))
                // Joined ones of several types: each rule once.
                if (candidates[r].empty() || candidates[r].back().item() != i)
                    candidates[r].emplace_back(r, Exam{}, i);
        }
    }
    for (const std::uint16_t r : rules)
        if (!candidates[r].empty()) check_rule(e, r, candidates[r]);
    check_pairs(e);
    return e;
}

} // namespace beadbook
