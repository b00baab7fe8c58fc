#pragma once

#include "facts/coupon_record.hpp"
#include "operations/catalogue.hpp"
#include "qualify/range.hpp"

#include <memory>
#include <string>
#include <vector>

namespace beadbook {

/// One process of a coupon, as a test of its own, and what it would qualify.
struct RangedTest {
    Weld test;
    std::vector<VariableRange> range;
};

struct RangeResult {
    CouponRecord coupon; ///< with a mark if it is on record
    std::shared_ptr<const RangeRules> rules;
    std::vector<RangedTest> tests;
};

/// What a coupon would qualify a welder for, on record or described (operations/described.hpp). Throws
/// Refusal: no rules or no coupon is named, or a word that the rules do not know.
RangeResult range_of_coupon(Catalogue &catalogue, const std::string &rules, const CouponRecord &coupon);

/// The rules for welders by name. Throws Refusal (field "rules") with all names if none is given.
std::shared_ptr<const RangeRules> needed_rules(Catalogue &catalogue, const std::string &name);

} // namespace beadbook
