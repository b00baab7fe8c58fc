#pragma once

#include "measure/day.hpp"
#include "records/entry.hpp"

#include <optional>
#include <vector>

namespace beadbook {

/// The earliest day of the weld that a coupon was said to have since somebody knew what an exam of it found:
/// a day that is told later makes no retest, no renewal and no test after a revocation of what was welded
/// before. Nothing if none was told since.
std::optional<Day> earliest_weld_day(const std::vector<Entry> &history);

} // namespace beadbook
