#pragma once

#include "random_case.hpp"

namespace beadbook::test {

/// Two finds of one type, exam and side that touch or overlap, where no merging clause of the set decides.
bool naive_touch(const CriteriaSet &set, const Coupon &coupon, const Indication &a, const Indication &b);

/// The coupon with those that touch made one, pair by pair until none is left.
RandomCase naive_as_one(const CriteriaSet &set, RandomCase c);

} // namespace beadbook::test
