#pragma once

#include "language/fields.hpp"
#include "qualify/range_rules.hpp"

namespace beadbook {

/// Keys `clause` and `standing`.
Authority read_authority(const Fields &fields, Issues &issues);

/// How long a qualification holds, what a failed or lapsed one needs: keys `validity`, `retest`, `renewal`.
void read_validity(const Fields &top, RangeRules &rules, Issues &issues);

} // namespace beadbook
