#pragma once

#include "qualify/cover_problem.hpp"

namespace beadbook {

/// The time that an outside solver gets for one plan, if the caller does not say otherwise.
constexpr std::chrono::milliseconds usual_patience{5'000};

/// The fewest sets that together hold everything that any of them holds, by index.
struct SetCover {
    std::vector<std::size_t> chosen;
    bool proven = true;             ///< no fewer do
    std::size_t at_least = 0;       ///< proven: no fewer than this do, whatever was chosen
    std::vector<std::string> notes; ///< sentences on what went wrong with the solver
};

/// Equal and dominated sets and elements are taken out and forced sets taken in, then each part is searched
/// here. Only a part that this does not settle is put to `solver`, if there is one; all such parts share the
/// `patience`. Its answer is used if it covers everything and is better, its bound unless it is disproved.
/// All sets have the same number of bits.
SetCover smallest_cover(const std::vector<Bits> &sets, const CoverSolver &solver = {},
                        std::chrono::milliseconds patience = usual_patience);

} // namespace beadbook
