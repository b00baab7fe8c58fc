#pragma once

#include "measure/quantity.hpp"

#include <optional>
#include <string_view>

namespace beadbook {

inline bool shorter(const Typed &a, const Typed &b) { return a.value < b.value; }

/// Of the sizes of one find, or of its places, some have a unit and some have none: that unit is of all, or
/// those without have the coupon's.
class OneUnit {
public:
    /// A length as it was typed, and as it was read. Throws InputError where one that was taken before
    /// has another unit, and one of the two was not written.
    void take(std::string_view typed, const Typed &read);

private:
    struct Taken {
        std::string_view typed;
        std::string unit;
    };
    std::optional<Taken> bare_, written_; ///< the first of each
};

} // namespace beadbook
