#include "qualify/cover_problem.hpp"

#include <algorithm>

namespace beadbook {

std::vector<Bits> CoverProblem::contents() const {
    std::vector<Bits> out(sets, Bits(holders.size()));
    for (std::size_t e = 0; e < holders.size(); ++e)
        for (auto s = holders[e].find_first(); s != Bits::npos; s = holders[e].find_next(s)) out[s].set(e);
    return out;
}

bool CoverProblem::covered_by(const std::vector<std::size_t> &chosen) const {
    Bits taken(sets);
    for (const std::size_t s : chosen) {
        if (s >= sets || taken[s]) return false;
        taken.set(s);
    }
    return std::all_of(holders.begin(), holders.end(), [&](const Bits &of) { return of.intersects(taken); });
}

} // namespace beadbook
