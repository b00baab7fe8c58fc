#pragma once

#include <string_view>

namespace beadbook {

/// The order in which people count: L1, L2, L10; capitals aside, and where that leaves two the same, byte by
/// byte. A strict weak order, also for std::map and std::set.
struct NaturalOrder {
    using is_transparent = void;
    bool operator()(std::string_view a, std::string_view b) const;
};

} // namespace beadbook
