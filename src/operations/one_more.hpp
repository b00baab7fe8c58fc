#pragma once

#include "operations/graded_tests.hpp"
#include "operations/standing.hpp"

namespace beadbook {

/// What a further coupon would let a welder do of one trait, that nothing held does.
struct AddedRange {
    Trait of = Trait::joint;
    std::vector<std::string> words; ///< new ones
    std::vector<RangePart> parts;   ///< of a size: what the coupon allows, which reaches beyond
};
/// A coupon like one that is held but for one trait, and what it would add if it is accepted and graded
/// passed.
struct OneMore {
    std::shared_ptr<const RangeRules> rules;
    Unit unit = Unit::inch;
    Weld coupon;
    std::vector<AddedRange> adds;
    /// What a test of its kind that failed asks beyond one coupon; absent: nothing.
    std::optional<Shortcoming> asked = {};
};
/// Coupons near to those that a welder's valid qualifications rest on: another position, joint or form, the
/// next thinner and thicker wall that shops weld. Of each kind the one that adds most, at most five, what
/// adds most first. Each thing that is said to be added was tried: a weld like one that is held, but for it,
/// which no valid qualification covers and the coupon would.
std::vector<OneMore> one_more_coupon(Office &office, const WelderStanding &standing);

} // namespace beadbook
