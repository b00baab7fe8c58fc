#pragma once

#include "qualify/range.hpp"
#include "report/document.hpp"

#include <string>
#include <vector>

namespace beadbook {

/// "the test's layers and the work's diameter".
std::string lacks_words(const std::vector<Lack> &lacks);

/// What a test qualifies, a variable an item, each part under it with its rule.
std::vector<Bullet> range_items(const std::vector<VariableRange> &range, Unit unit);

/// Sizes of which an end is compared otherwise than it was worked out, with both numbers: "thickness: from
/// 0.03 in (computed 0.03015 in) to 0.18 in". Their source is what the comparison rests on.
std::vector<Bullet> rounded_items(const std::vector<VariableRange> &range, const EndComparison &ends,
                                  Unit unit);

/// Why one variable keeps a test from covering one weld of the work: what the work has, what the test allows.
std::string shortfall_words(const VariableCover &fail, const VariableRange &allows, const Weld &work,
                            Unit unit);

} // namespace beadbook
