#pragma once

#include <boost/dynamic_bitset.hpp>
#include <vector>

namespace beadbook {

using Bits = boost::dynamic_bitset<>;

/// The fewest sets that together hold everything that any of them holds, by index, and whether that was
/// proven. Exact: equal and dominated sets and elements are taken out first, the rest is solved as an integer
/// program (GLPK), and the answer is checked against the sets. All sets have the same number of bits.
struct SetCover {
    std::vector<std::size_t> chosen;
    bool proven = true;
};
SetCover smallest_cover(const std::vector<Bits> &sets);

} // namespace beadbook
