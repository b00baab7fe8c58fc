#pragma once

#include "qualify/cover_problem.hpp"

namespace beadbook {

/// A part of a cover that has nothing in common with the other parts.
struct CoverPart {
    CoverProblem problem;
    std::vector<std::size_t> names; ///< by set of the problem: its index among the sets that were given
};

/// A cover with all that is plain taken out. The forced sets and a smallest cover of each part together are
/// a smallest cover of the whole.
struct ReducedCover {
    std::vector<std::size_t> forced; ///< sets that alone hold something
    std::vector<CoverPart> parts;
};

/// Takes out equal and dominated sets and elements and what is forced, until nothing changes, and cuts what
/// is left into parts. To cover is what any of the sets holds. All sets have the same number of bits.
ReducedCover reduce_cover(const std::vector<Bits> &sets);

} // namespace beadbook
