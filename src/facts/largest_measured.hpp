#pragma once

#include "facts/indication_record.hpp"

#include <span>

namespace beadbook {

/// The largest fillet size and throat that one exam measured on one side of a weld.
struct LargestMeasured {
    std::optional<Exact> fillet, throat;
};
/// Of a fillet size or a throat, itself and the others of its exam on its side; a side that nobody said may
/// be any. Of any other find none.
LargestMeasured largest_measured(const IndicationRecord &find, std::span<const IndicationRecord> others);

} // namespace beadbook
