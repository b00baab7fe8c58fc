#pragma once

#include "facts/exam_record.hpp"

#include <string>

namespace beadbook {

/// Buttons that put a log line together: types, sizes, place. Hidden until a module makes them work.
std::string log_pad_part(const CouponRecord &coupon, const ExamRecord &exam);

} // namespace beadbook
