#pragma once

#include "facts/exam_record.hpp"
#include "operations/judging.hpp"

#include <string>

namespace beadbook {

/// Buttons that put a log line together: types, sizes, place. Hidden until a module makes them work.
/// What the set wants measured and nobody did yet comes first.
std::string log_pad_part(const CouponRecord &coupon, const ExamRecord &exam, const JudgedOrNot &judged);

} // namespace beadbook
