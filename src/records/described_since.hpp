#pragma once

#include "facts/stamp.hpp"
#include "records/changed_values.hpp"

#include <string>
#include <vector>

namespace beadbook {

/// One change of what a coupon is said to be: its sizes, its metal, its criteria.
struct DescribedSince {
    std::vector<ChangedValue> values;
    std::string why;
    Stamp stamp;
};
/// Changes of the coupon that were entered after an entry, its verdict or its grade say, oldest first; none
/// of what stands again as it did then.
std::vector<DescribedSince> described_since(const std::vector<Entry> &history, std::int64_t entry);
/// What the coupon says otherwise by now than it did at an entry, in the order of its fields: what was
/// changed back is not among it.
std::vector<ChangedValue> said_otherwise_since(const std::vector<Entry> &history, std::int64_t entry);

} // namespace beadbook
