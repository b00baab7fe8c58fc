#pragma once

#include "qualify/cover_problem.hpp"

#include <random>

namespace beadbook::test {

/// Each set holds each element with that chance, each element in two sets at least.
CoverProblem random_cover(std::mt19937 &random, std::size_t elements, std::size_t sets, std::size_t percent);

/// The lines of the affine space over three elements, to be met by as few of its points as will do: what is
/// left out is a largest cap set, three of whose points never lie in a line. They are hard to prove, and
/// their sizes are known: 4, 9 and 20 points in dimension 2, 3 and 4 (the last by G. Pellegrino, 1970; from
/// memory). So the smallest covers have 5 of 9, 18 of 27 and 61 of 81 points.
CoverProblem lines_to_meet(int dimension);

/// The size of a smallest cover, by trying all; for at most 16 sets.
std::size_t fewest_by_trying(const CoverProblem &problem);

} // namespace beadbook::test
