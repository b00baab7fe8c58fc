#pragma once

#include "operations/office.hpp"

namespace beadbook {

/// The id under which it is kept that a coupon was meant to be another piece.
inline constexpr const char *like_another_piece = "piece-like-another";

/// Asks of each test coupon of an import whether it is another piece than one of the same welder, on record
/// or earlier in the file, of which all is said that is said of it: its weld, its exams and what they found.
/// A copy under another mark would count as a second one after a failure. One that is meant keeps that with
/// its entry. Throws Unsure.
void ask_same_pieces(Office &office, std::vector<Entry> &entries, bool sure);

} // namespace beadbook
