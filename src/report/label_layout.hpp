#pragma once

#include <cstddef>
#include <vector>

namespace beadbook {

/// A label for something at `at`, so wide.
struct LabelWish {
    double at = 0, width = 0;
};
/// Where it stands: its left edge, and its row, 0 nearest to what it is for.
struct LabelSpot {
    double left = 0;
    std::size_t row = 0;
};

/// Moves labels apart, so that no two overlap and none leaves `from`..`to` (one that is wider begins at
/// `from`): aside where that is near, else into a further row; within a row their order is kept, so that no
/// leaders of one row cross. In the order of the wishes.
std::vector<LabelSpot> spread_labels(const std::vector<LabelWish> &wishes, double from, double to,
                                     double gap = 4);

} // namespace beadbook
