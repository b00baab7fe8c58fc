#pragma once

#include "random_case.hpp"

namespace beadbook::test {

/// A second evaluator, deliberately naive: no sorting, no sweeping, all pairs, all windows on a fine grid,
/// all runs. It knows only coupons with nothing missing. It shares with the real one the formulas and nothing
/// else.
std::vector<Verdict> naive_verdicts(const CriteriaSet &set, const RandomCase &c);

} // namespace beadbook::test
