#include "qualify/cover_reduction.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

/// Indices of sets that no other set holds whole; of equal ones the first.
std::vector<std::size_t> undominated(const std::vector<Bits> &sets) {
    std::vector<std::size_t> order(sets.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return sets[a].count() > sets[b].count(); });
    std::vector<std::size_t> out;
    for (const std::size_t i : order) {
        if (sets[i].none()) break;
        const bool inside =
            std::any_of(out.begin(), out.end(), [&](std::size_t o) { return sets[i].is_subset_of(sets[o]); });
        if (!inside) out.push_back(i);
    }
    std::sort(out.begin(), out.end());
    return out;
}

/// For each element the sets that hold it. An element whose holders include those of another needs no care:
/// whatever covers the other covers it.
std::vector<Bits> hardest_elements(const std::vector<Bits> &sets, const std::vector<std::size_t> &kept) {
    const std::size_t elements = sets.empty() ? 0 : sets.front().size();
    std::set<Bits> distinct;
    for (std::size_t e = 0; e < elements; ++e) {
        Bits holders(kept.size());
        for (std::size_t k = 0; k < kept.size(); ++k) holders[k] = sets[kept[k]][e];
        if (holders.any()) distinct.insert(std::move(holders));
    }
    std::vector<Bits> all(distinct.begin(), distinct.end());
    std::stable_sort(all.begin(), all.end(),
                     [](const Bits &a, const Bits &b) { return a.count() < b.count(); });
    std::vector<Bits> out;
    for (const auto &holders : all)
        if (std::none_of(out.begin(), out.end(),
                         [&](const Bits &harder) { return harder.is_subset_of(holders); }))
            out.push_back(holders);
    return out;
}

/// The elements that hang together with `first`, by way of sets that hold several.
Bits together_with(std::size_t first, const std::vector<Bits> &contents, const CoverProblem &problem) {
    Bits found(problem.holders.size()), seen(problem.sets);
    found.set(first);
    std::vector<std::size_t> open{first};
    while (!open.empty()) {
        const Bits fresh = problem.holders[open.back()] - seen;
        open.pop_back();
        seen |= fresh;
        for (auto s = fresh.find_first(); s != Bits::npos; s = fresh.find_next(s)) {
            const Bits more = contents[s] - found;
            found |= more;
            for (auto e = more.find_first(); e != Bits::npos; e = more.find_next(e)) open.push_back(e);
        }
    }
    return found;
}

std::vector<CoverPart> parts_of(const CoverProblem &problem, const std::vector<std::size_t> &names) {
    const auto contents = problem.contents();
    std::vector<CoverPart> out;
    Bits left(problem.holders.size());
    left.set();
    while (left.any()) {
        const Bits elements = together_with(left.find_first(), contents, problem);
        left -= elements;
        CoverPart part;
        std::vector<std::size_t> sets;
        for (std::size_t s = 0; s < problem.sets; ++s)
            if (contents[s].intersects(elements)) {
                sets.push_back(s);
                part.names.push_back(names[s]);
            }
        part.problem.sets = sets.size();
        for (auto e = elements.find_first(); e != Bits::npos; e = elements.find_next(e)) {
            Bits holders(sets.size());
            for (std::size_t s = 0; s < sets.size(); ++s) holders[s] = problem.holders[e][sets[s]];
            part.problem.holders.push_back(std::move(holders));
        }
        out.push_back(std::move(part));
    }
    return out;
}

} // namespace

ReducedCover reduce_cover(const std::vector<Bits> &given) {
    ReducedCover out;
    std::vector<Bits> sets = given;
    std::vector<std::size_t> names(sets.size());
    for (std::size_t i = 0; i < names.size(); ++i) names[i] = i;
    while (true) {
        const auto kept = undominated(sets);
        const auto rows = hardest_elements(sets, kept);
        const bool same = kept.size() == sets.size() && (sets.empty() || rows.size() == sets.front().size());
        std::vector<std::size_t> kept_names;
        for (const std::size_t k : kept) kept_names.push_back(names[k]);
        names = std::move(kept_names);
        // What else a forced set holds is no row any more: the forced row stands in for it.
        CoverProblem problem{kept.size(), {}};
        for (const auto &row : rows) {
            if (row.count() == 1)
                out.forced.push_back(names[row.find_first()]);
            else
                problem.holders.push_back(row);
        }
        if (same && problem.holders.size() == rows.size()) {
            out.parts = parts_of(problem, names);
            return out;
        }
        sets = problem.contents();
    }
}

} // namespace beadbook
