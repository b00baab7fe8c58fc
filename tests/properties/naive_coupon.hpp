#pragma once

#include "judge/coupon.hpp"

namespace beadbook::test {

/// What the naive evaluator asks of a coupon before it looks at what was found.

/// Of a set whose scope was not read: the weld's joint or metal is not told, so nothing is accepted.
bool naive_asks_what_weld(const CriteriaSet &set, const Coupon &coupon);

/// Every part of the scope that is asked holds for certain: by each of the weld's words, where it has
/// several.
bool naive_covers(const CriteriaSet &set, const Coupon &coupon);

/// A limit; of one printed in two units the coupon's, without a unit whichever is met more easily.
Evaluated naive_limit(const Rule &rule, const Formula &formula, const Coupon &coupon,
                      const Environment::Values &local);

} // namespace beadbook::test
