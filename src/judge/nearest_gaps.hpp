#pragma once

#include "judge/item.hpp"

#include <vector>

namespace beadbook {

/// Gives each item the free way along the weld to the nearest other imperfection that the same exam found and
/// that counts, and to the nearest that is of the same wider type, as far as the set asks for them. A way is
/// not known with an unplaced one somewhere, with one that may be merged or may not count at all and would be
/// the nearest, or on a turn of unknown length. A lone one has the longest possible way to go. O(n log n).
void set_nearest_gaps(std::vector<Item> &items, const CriteriaSet &set, const Coupon &coupon,
                      const std::vector<Indication> &indications, const Vocabulary &vocabulary, int engine);

} // namespace beadbook
