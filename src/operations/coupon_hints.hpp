#pragma once

#include "facts/coupon_record.hpp"
#include "operations/catalogue.hpp"

namespace beadbook {

/// What the program could work out of a coupon and must not take for granted, because a wrong guess could
/// pass a bad weld: the thickness of a butt that may not be welded through, the seam of a tube, the unit of
/// bare numbers. Each with what to say.
std::vector<std::string> hints_on(Catalogue &catalogue, const CouponRecord &coupon);

/// What is taken as it is said, and was perhaps not meant: a plate with a diameter, a weld that is to come, a
/// material in which criteria see no metal, a word that the rules which such tests go with call otherwise.
std::vector<std::string> doubts_on(Catalogue &catalogue, const CouponRecord &coupon);

} // namespace beadbook
