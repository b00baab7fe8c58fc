#pragma once

#include "operations/welder_names.hpp"

#include <cstdint>

namespace beadbook {

/// Coupons of marks whose bearer was called by a name of this welder's once, and by quite another one since
/// (a name that went from mark to mark, and with it, perhaps, the person), and those whose welder is called
/// so where they come from.
std::vector<std::string> coupons_once_his(Book &book, const WelderNames &welder);

/// The name of this welder's by which the one who welded a coupon was called when it came on record, or is
/// where it comes from, under a mark that is not his and whose bearer is called otherwise. Empty: there is
/// none, so it was not this welder.
std::string called_as_then(Book &book, const CouponRecord &coupon, std::int64_t begun,
                           const WelderNames &welder);

} // namespace beadbook
