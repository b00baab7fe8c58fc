#pragma once

#include "operations/welder_names.hpp"

#include <cstdint>

namespace beadbook {

/// Marks whose bearer was called by a name of this welder's once, and by quite another one since: a name that
/// went from mark to mark, and with it, perhaps, the person.
std::vector<std::string> marks_once_called_as(Book &book, const WelderNames &welder);

/// The name of this welder's by which the one who welded a coupon was called when it came on record, under a
/// mark that is another's and is called otherwise since. Empty: there is none, so it was not this welder.
std::string called_as_then(Book &book, const CouponRecord &coupon, std::int64_t begun,
                           const WelderNames &welder);

} // namespace beadbook
