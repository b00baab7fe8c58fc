#pragma once

#include "operations/office.hpp"

namespace beadbook {

/// Shipped rules for welders that ask mechanical tests of such a test weld and take nothing instead, each
/// with who asks: "aws-d1.1 [test welds, fillet break and macro, memory]". Nothing for a coupon that names no
/// welder, was welded for practice, or has a result on record.
std::vector<std::string> lacking_mechanical(Catalogue &catalogue, const CouponRecord &coupon);
/// The same in a sentence; empty if nothing is asked.
std::string mechanical_asked_words(const std::vector<std::string> &by);

} // namespace beadbook
