#pragma once

#include "judge/coupon.hpp"

#include <vector>

namespace beadbook {

/// By whose name several of unlike kinds are called as one.
enum class Named : std::uint8_t { first, another };

/// Where several lie as one, if that is known, and how far they reach together, in nanometres.
struct Extent {
    std::optional<Span> place;
    std::int64_t length = 0;
};

/// Finds that may be one imperfection.
struct OneOf {
    std::vector<const Indication *> parts;
    Extent extent;
};

/// The shortest stretch that holds them all; each has a place. On a closed weld whichever way round.
Extent extent_of(const std::vector<const Indication *> &parts, std::optional<std::int64_t> around);

/// Of those that are unlike the first, the first one's; else its own.
TypeId another_type(const std::vector<const Indication *> &parts);

/// All of them as one: depth, height, width and angle of the largest where all are known, areas together.
Indication as_one(const OneOf &several, const Vocabulary &vocabulary, Named named);

/// None is wider than long, save for a cap or a root, which has no shape that goes by it.
Exact at_most_as_wide(const std::vector<const Indication *> &parts);

} // namespace beadbook
