#pragma once

#include "judge/coupon.hpp"
#include "judge/few.hpp"

#include <cstddef>
#include <functional>
#include <optional>
#include <span>
#include <vector>

namespace beadbook {

/// Two stretches and the free distance between them along the weld (0 if they meet or overlap). `first`
/// comes before `second`; on a closed weld the gap may lie over the datum.
struct Pair {
    std::size_t first = 0, second = 0;
    std::int64_t gap = 0;
};

/// Enough pairs to decide any spacing rule whose limit grows with the larger of two: each stretch with the
/// one that begins next, and with the earlier one that reaches furthest. At most two a stretch (four on a
/// closed weld), in a fixed order. O(n log n).
///
/// Why these suffice: if two stretches are too near for the larger of them, that larger one is also too near
/// to its next one, or to the earlier one that reaches furthest: the gap is no larger and the limit no
/// smaller.
Several<Pair> neighbour_pairs(std::span<const Span> spans, std::optional<std::int64_t> around);

/// Of each stretch the free way to the nearest of those that are marked in `to`, itself left out; the longest
/// possible way where there is none. O(n log n).
Several<std::int64_t> gaps_to(std::span<const Span> spans, const std::vector<bool> &to,
                              std::optional<std::int64_t> around);

/// Whether a gap links two neighbours, given the longest member of their group.
using Links = std::function<bool(std::int64_t gap, std::int64_t longest)>;

/// Stretches in line: the largest runs in which every gap is linked for the longest member of the run.
/// `links` must not become false when the gap shrinks or the longest grows; then the runs do not overlap
/// and no order matters. Each run's members are in order along the weld. O(n log n).
std::vector<std::vector<std::size_t>> groups_in_line(std::span<const Span> spans,
                                                     std::span<const std::int64_t> lengths,
                                                     std::optional<std::int64_t> around, const Links &links);

} // namespace beadbook
