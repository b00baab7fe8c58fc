#include "judge/settle_verdict.hpp"

#include <algorithm>
#include <set>
#include <tuple>

namespace beadbook {
namespace {

auto rank_of(const Finding &f) {
    const bool scope = f.kind == Finding::Kind::outside_scope || f.kind == Finding::Kind::scope_unknown;
    return std::make_tuple(-static_cast<int>(f.effect),
                           scope        ? -1
                           : f.rule < 0 ? 1
                                        : 0,
                           f.rule, static_cast<int>(f.kind), f.clause);
}

bool before(const Finding &a, const Finding &b) {
    const auto x = rank_of(a), y = rank_of(b);
    if (x != y) return x < y;
    if (a.indications != b.indications) return a.indications < b.indications;
    const auto place = [](const Finding &f) { return f.place ? f.place->from.nm : -1; };
    return place(a) < place(b);
}

bool same(const Finding &a, const Finding &b) {
    return rank_of(a) == rank_of(b) && a.indications == b.indications && a.exams == b.exams &&
           a.missing == b.missing && a.has_numbers == b.has_numbers && a.measured == b.measured &&
           a.limit == b.limit;
}

/// What may not be there at all is said once, by the first rule that forbids it.
void forbid_once(std::vector<Finding> &findings) {
    const auto forbids = [](const Finding &f) { return f.kind == Finding::Kind::not_allowed; };
    if (std::count_if(findings.begin(), findings.end(), forbids) < 2) return;
    std::set<std::vector<int>> forbidden;
    std::erase_if(findings,
                  [&](const Finding &f) { return forbids(f) && !forbidden.insert(f.indications).second; });
}

} // namespace

void settle_verdict(ClassJudgement &judged) {
    auto &findings = judged.findings;
    if (!std::is_sorted(findings.begin(), findings.end(), before))
        std::stable_sort(findings.begin(), findings.end(), before);
    // The same pair can be met from both sides.
    findings.erase(std::unique(findings.begin(), findings.end(), same), findings.end());
    forbid_once(findings);
    for (const auto &f : findings) judged.verdict = std::max(judged.verdict, f.effect);
}

} // namespace beadbook
