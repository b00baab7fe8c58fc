#include "qualify/set_cover.hpp"

#include "qualify/cover_reduction.hpp"
#include "qualify/cover_search.hpp"

#include <algorithm>
#include <stdexcept>

namespace beadbook {
namespace {

constexpr std::size_t most_steps = 2'000'000; ///< a fraction of a second

void note(SetCover &out, const std::string &sentence) {
    if (!sentence.empty() && std::find(out.notes.begin(), out.notes.end(), sentence) == out.notes.end())
        out.notes.push_back(sentence);
}

/// Takes of the answer what holds: a cover that is checked, and a bound that what is known does not disprove.
void improve(CoverSearch &found, const CoverAnswer &answer, const CoverProblem &problem, SetCover &out) {
    note(out, answer.note);
    if (answer.chosen.empty()) return;
    if (!problem.covered_by(answer.chosen)) {
        note(out, "The solver's answer leaves work uncovered and was not used.");
        return;
    }
    const std::size_t fewest = std::min(found.chosen.size(), answer.chosen.size());
    if (answer.chosen.size() < found.chosen.size()) found.chosen = answer.chosen;
    if (answer.at_least > fewest)
        note(out, "The solver's proof does not hold and was not used: fewer coupons do.");
    else
        found.at_least = std::max(found.at_least, answer.at_least);
}

} // namespace

SetCover smallest_cover(const std::vector<Bits> &sets, const CoverSolver &solver,
                        std::chrono::milliseconds patience) {
    const ReducedCover reduced = reduce_cover(sets);
    std::vector<CoverSearch> found;
    for (const auto &part : reduced.parts) found.push_back(search_cover(part.problem, most_steps));
    const auto open = std::count_if(found.begin(), found.end(), [](const CoverSearch &search) {
        return search.at_least < search.chosen.size();
    });
    SetCover out;
    out.chosen = reduced.forced;
    out.at_least = reduced.forced.size();
    for (std::size_t p = 0; p < found.size(); ++p) {
        const CoverPart &part = reduced.parts[p];
        if (solver && found[p].at_least < found[p].chosen.size())
            improve(found[p], solver(part.problem, patience / open), part.problem, out);
        for (const std::size_t s : found[p].chosen) out.chosen.push_back(part.names[s]);
        out.at_least += found[p].at_least;
    }
    std::sort(out.chosen.begin(), out.chosen.end());
    out.proven = out.at_least == out.chosen.size();
    Bits covered, all;
    for (const auto &set : sets) {
        all.resize(set.size());
        all |= set;
    }
    covered.resize(all.size());
    for (const std::size_t c : out.chosen) covered |= sets[c];
    if (covered != all) throw std::logic_error("the plan does not cover");
    return out;
}

} // namespace beadbook
