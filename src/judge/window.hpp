#pragma once

#include "measure/exact.hpp"
#include "measure/quantity.hpp"

#include <cstdint>
#include <optional>
#include <span>

namespace beadbook {

/// What one indication brings to a window.
struct Stretch {
    std::int64_t from = 0; ///< nm from the datum
    std::int64_t to = 0;   ///< >= from
    Int128 weight = 0;     ///< counted in full when any part of it lies in the window
    std::int64_t across_from = 0, across_to = 0;
    std::size_t id = 0; ///< which indication; one that a window touches at both of its ends counts once
};

/// The worst placed window: how much it holds and where it lies.
struct WorstWindow {
    Int128 held = 0;
    std::int64_t from = 0, to = 0;
};

/// The most length that any window of `width` holds; of a stretch that is cut by the window's end only the
/// part inside counts. On a closed weld of `around` the window may lie over the datum. Exact: the sum is
/// piecewise linear, so the worst window begins where a stretch begins or ends where one ends. O(n log n).
WorstWindow most_length(std::span<const Stretch> stretches, std::int64_t width,
                        std::optional<std::int64_t> around);

/// The most weight that any window of `width` touches: a stretch that the window cuts counts in full, one
/// that it only meets at a point does not. O(n log n).
WorstWindow most_weight(std::span<const Stretch> stretches, std::int64_t width,
                        std::optional<std::int64_t> around);

/// The most stretches that a rectangle of `area` with sides of at most `longest` touches, placed worst case,
/// its sides along and across the weld. Exact up to `enough`, which is past any limit; beyond that one that
/// is more than `enough`. O(n log n) where no stretch of weld `longest` long holds many, and elsewhere by
/// how many lie side by side there.
WorstWindow most_in_area(std::span<const Stretch> stretches, Int128 area, std::int64_t longest,
                         std::size_t enough, std::optional<std::int64_t> around);

} // namespace beadbook
