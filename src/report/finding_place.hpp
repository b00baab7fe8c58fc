#pragma once

#include "report/sentence.hpp"

namespace beadbook {

/// From where the first of the finds begins to where the last ends, seen along the weld from a window that
/// holds them; on a girth weld from the first turn.
Span extent_of(const Case &c, const std::vector<int> &numbers, const Span &window);

/// Where a finding is, as people lay it: a window begins where the first of its finds does, if it holds them
/// as well there; it ends, on a straight weld, where the weld does. Absent: no place is known.
std::optional<Span> laid_place(const Case &c, std::size_t class_index, const Finding &finding);

} // namespace beadbook
