#pragma once

#include "records/taken_back.hpp"

#include <set>
#include <vector>

namespace beadbook {

/// Entries that change an exam, or a find of it, as one who looks over what he wrote does: nobody had
/// finished the exam or seen a verdict, and who entered it took it back himself, a crack and the like within
/// ten minutes, all else within a shift (common practice, no source). `history` is all of the coupon, oldest
/// first, and `taken_back` what taken_back_in reads of it.
std::set<std::int64_t> slips_in(const std::vector<Entry> &history, const std::vector<TakenBack> &taken_back);

} // namespace beadbook
