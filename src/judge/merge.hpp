#pragma once

#include "judge/item.hpp"

namespace beadbook {

/// Neighbours that the clause counts as one become one item, again and again until none is left to join:
/// a joined one is larger and may reach further. Length is end to end, gaps included; depth, height and
/// width are the largest; areas add. Only items with a place and the sizes that the clause asks for can join;
/// if there are others, or the length of a turn is not known, all are marked `may_merge`. On a closed weld
/// the datum is no border, and neighbours near each other both ways round become a ring: as long as the weld.
void merge_items(std::vector<Item> &items, const Merge &clause, const std::vector<Indication> &indications,
                 const Coupon &coupon);

} // namespace beadbook
