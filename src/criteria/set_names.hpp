#pragma once

#include "language/fields.hpp"
#include "language/names.hpp"

namespace beadbook {

/// Adds the author's symbols for a coupon's quantities, key `quantities`: {T: thinner member}.
void read_symbols(const Fields &top, Names &names);

/// Adds what every criteria set may speak of: measures of an indication, of neighbours and groups, the
/// coupon's facts, attributes of an indication. A symbol that was read before hides a measure of the same
/// name.
void add_set_names(Names &names);

} // namespace beadbook
