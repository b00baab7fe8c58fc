#include "judge/settle_verdict.hpp"

#include <algorithm>
#include <limits>
#include <set>

namespace beadbook {
namespace {

/// The scope first, then what rules say, then what is missing as a whole.
int group_of(const Finding &f) {
    const bool scope = f.kind == Finding::Kind::outside_scope || f.kind == Finding::Kind::scope_unknown;
    return scope ? 0 : f.rule >= 0 ? 1 : 2;
}

/// By effect, group, rule, kind and clause, in one number: rules and clauses of a set are few.
std::uint64_t rank_of(const Finding &f) {
    const auto part = [](auto value, int shift) { return static_cast<std::uint64_t>(value) << shift; };
    return part(static_cast<int>(Verdict::reject) - static_cast<int>(f.effect), 56) | part(group_of(f), 48) |
           part(f.rule + 1, 32) | part(f.kind, 24) | part(f.clause + 1, 0);
}

bool before(const Finding &a, const Finding &b) {
    const auto x = rank_of(a), y = rank_of(b);
    if (x != y) return x < y;
    if (a.indications != b.indications) return a.indications < b.indications;
    const auto place = [](const Finding &f) { return f.place ? f.place->from.nm : -1; };
    return place(a) < place(b);
}

/// A weld with very many finds has very many reasons, so they are moved once: what is sorted is small, and
/// mostly tells the order by itself.
void sort_findings(std::vector<Finding> &findings) {
    struct Key {
        std::uint64_t rank;
        std::int64_t first; ///< indication
        const Finding *of;
    };
    std::vector<Key> keys;
    keys.reserve(findings.size());
    for (const auto &f : findings)
        keys.push_back({rank_of(f),
                        f.indications.empty() ? std::numeric_limits<std::int64_t>::min()
                                              : std::int64_t{f.indications.front()},
                        &f});
    std::stable_sort(keys.begin(), keys.end(), [](const Key &a, const Key &b) {
        if (a.rank != b.rank) return a.rank < b.rank;
        return a.first != b.first ? a.first < b.first : before(*a.of, *b.of);
    });
    std::vector<Finding> sorted;
    sorted.reserve(findings.size());
    for (const auto &key : keys)
        sorted.push_back(std::move(findings[static_cast<std::size_t>(key.of - findings.data())]));
    findings = std::move(sorted);
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
    if (!std::is_sorted(findings.begin(), findings.end(), before)) sort_findings(findings);
    // The same pair can be met from both sides.
    findings.erase(std::unique(findings.begin(), findings.end(), same), findings.end());
    forbid_once(findings);
    for (const auto &f : findings) judged.verdict = std::max(judged.verdict, f.effect);
}

} // namespace beadbook
