#pragma once

#include "facts/indication_record.hpp"
#include "operations/catalogue.hpp"

namespace beadbook {

/// Depth, height, angle or area, and how large a pore, an inclusion or a fillet is, that somebody measured of
/// a find and that no part of the coupon's criteria reads of such a find, a sentence each: no verdict goes by
/// it. Nothing where no rule measures such a find.
std::vector<std::string> unread_measures(Catalogue &catalogue, const CouponRecord &coupon, Exam exam,
                                         const IndicationRecord &find);
/// The same of a set at hand.
std::vector<std::string> unread_measures(const CriteriaSet &set, Exam exam, const IndicationRecord &find);

} // namespace beadbook
