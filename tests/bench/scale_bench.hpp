#pragma once

#include "figures.hpp"

namespace beadbook::bench {

/// What commands cost on a record of so many coupons of five finds each: time on the clock and of the
/// processor, and the most memory, beside bare SQLite that reads the same rows. To fill the record takes
/// longest.
void at_scale(Figures &figures, int coupons);

} // namespace beadbook::bench
