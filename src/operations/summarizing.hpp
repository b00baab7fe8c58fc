#pragma once

#include "operations/selection.hpp"
#include "operations/shops.hpp"
#include "operations/summary.hpp"

namespace beadbook {

/// Which coupons, and how they came out.
struct SummaryGroup {
    Selection of;
    Summary summary;
};
/// One group, or two side by side.
struct Summaries {
    std::vector<SummaryGroup> groups;
};

/// Counts what is selected, each coupon judged afresh for its own class; withdrawn ones are left out. First
/// of its kind is the welder's first coupon with the same joint, forms, position, process, criteria, class
/// and purpose, looked for among all on record, selected or not: by the day it was welded, on one day by the
/// mark, those without a day last. Without a welder none is.
Summaries summarize(const Shops &shops, const std::vector<Selection> &groups);

} // namespace beadbook
