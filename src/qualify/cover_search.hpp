#pragma once

#include "qualify/cover_problem.hpp"

namespace beadbook {

/// The best cover found, and a number that no cover is below. Equal: it is a smallest one.
struct CoverSearch {
    std::vector<std::size_t> chosen;
    std::size_t at_least = 0;
};

/// Set by set the one that holds most of what is left, without those that turn out to be needless.
std::vector<std::size_t> greedy_cover(const CoverProblem &problem);

/// A number of sets below which there is no cover, by whole numbers alone: n elements are picked, some of
/// them many times, such that no set holds more than m of the picks; so at least n / m sets are needed.
std::size_t cover_bound(const CoverProblem &problem);

/// Branch and bound, given up after so many steps, of which a computer makes some ten million in a second.
/// The same problem always gives the same answer.
CoverSearch search_cover(const CoverProblem &problem, std::size_t most_steps);

} // namespace beadbook
