#pragma once

#include "facts/coupon_record.hpp"

#include <map>
#include <string>

namespace beadbook {

// A weld thickness that is said in a word: full, the butt is welded through.

/// A groove weld whose joint is a butt, or not told.
bool may_be_butt(const CouponRecord &coupon);
/// The thinner of the members as it was written; empty if none is known.
std::string thinner_text(const CouponRecord &coupon);
/// Whether the weld thickness is given as `full`.
bool says_through(const std::map<std::string, std::string> &fields);
/// What that is: the words of the thinner member, because somebody says that the butt is welded through.
/// Throws Refusal (field "weld-thickness"): no thickness is known, or the joint is no butt.
std::string through_thickness(const CouponRecord &coupon);

/// A weld thickness that was the thinner member's does not stay behind unsaid where that changes, or where
/// the joint is no butt any more: it may have come from `full`. `given`: the fields that make `now` of
/// `before`. What is registered like another and is no butt has it not; else throws Refusal (field
/// "weld-thickness").
void take_weld_along(const CouponRecord &before, const std::map<std::string, std::string> &given,
                     CouponRecord &now);

} // namespace beadbook
