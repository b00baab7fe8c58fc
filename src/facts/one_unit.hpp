#pragma once

#include "measure/quantity.hpp"

#include <string_view>

namespace beadbook {

inline bool shorter(const Typed &a, const Typed &b) { return a.value < b.value; }

/// Of two numbers that belong together (length x width, from .. to) the second alone has a unit: it is of
/// both, or the first has the coupon's. `typed` ends with the first as it was typed. Throws InputError where
/// these differ.
void check_one_unit(std::string_view typed, const Typed &first, const Typed &second, std::size_t column);

} // namespace beadbook
