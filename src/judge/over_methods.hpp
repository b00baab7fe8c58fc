#pragma once

#include "judge/evaluation.hpp"

namespace beadbook {

/// Rules by index, ascending, that sum, count or space finds, that may apply, and that speak of what several
/// methods found. Each method is looked at by itself; an accept must hold for all of them together too.
std::vector<std::uint16_t> rules_over_methods(const BoundSet &bound,
                                              const std::vector<Indication> &indications);

/// What those rules say of all methods together (see counted_once.hpp).
Evaluation taken_together(const Evaluation &apart, const std::vector<std::uint16_t> &rules);

} // namespace beadbook
