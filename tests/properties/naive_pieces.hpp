#pragma once

#include "random_case.hpp"

namespace beadbook::test {

/// The widest type that it belongs to; one for all that is called by its shape alone.
TypeId naive_family(TypeId type);

/// What makes finds that touch pieces of one: their family, or also a rule on how long or large each may be.
enum class NaiveKin : std::uint8_t { family, family_or_rule };

/// Two finds of one kin, exam and side that touch or overlap, where no merging clause of the set decides.
bool naive_touch(const CriteriaSet &set, const Coupon &coupon, const Indication &a, const Indication &b,
                 NaiveKin kin = NaiveKin::family_or_rule);

/// The coupon with those that touch made one, pair by pair until none is left; each is called as the first of
/// its pieces is, or as the first one of another name.
RandomCase naive_as_one(const CriteriaSet &set, RandomCase c, NaiveKin kin, bool another_name);

} // namespace beadbook::test
