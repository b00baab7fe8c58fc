#pragma once

#include "operations/office.hpp"

#include <map>
#include <string>

namespace beadbook {

/// A coupon that is described and not on record: fields by their names (facts/coupon_record.hpp), read in
/// the table's order, so that bare numbers take the units that stand among them. Throws Refusal at the field.
CouponRecord described_coupon(const std::map<std::string, std::string> &fields);

/// One on record, with some of its fields otherwise. Throws Refusal: there is none of that mark.
CouponRecord described_coupon(Office &office, const std::string &id,
                              const std::map<std::string, std::string> &otherwise = {});

} // namespace beadbook
