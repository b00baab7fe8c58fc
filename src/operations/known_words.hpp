#pragma once

#include "facts/coupon_record.hpp"
#include "operations/catalogue.hpp"

namespace beadbook {

/// Words that any of the shipped rules for welders knows for a trait of a test, each once.
std::vector<std::string> known_test_words(Catalogue &catalogue, Trait trait);

/// Process and position of a coupon as rules write them, capitals aside. Words that no rules know are refused
/// at the field, with those that are known: nothing would ever ask about them again. `by` are the rules that
/// the test is of; null: any that are shipped. Throws Refusal.
void take_known_words(Catalogue &catalogue, CouponRecord &coupon, const RangeRules *by);

/// Why what a coupon says of its filler (the field filler-group or filler-type) is not told of each of its
/// processes: one filler is not that of two. Empty: it is told of each, or of none.
std::string filler_of_several(const CouponRecord &coupon, const std::string &field);

/// Why a later process of a coupon, or the second side, is said to be welded without backing, though what was
/// welded first backs it (common practice, no source). Empty: none is said so.
std::string backing_of_later(const CouponRecord &coupon);

} // namespace beadbook
