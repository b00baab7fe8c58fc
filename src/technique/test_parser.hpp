#pragma once

#include "technique/practice.hpp"

namespace beadbook {

/// A test of one condition, as practices write it:
///   technique is yoke or prods      temperature from 40 F below 50 F
///   light at least 100 fc           current from 90 A/in x spacing to 110 A/in x spacing
///   certificate not past            vision within 1 year
///   dwell at least greater of 0.5 x base dwell and 5 min
/// Subjects are the known conditions, and of the coupon: joint, form, magnetic, thickness, diameter.
/// Throws InputError with the column of the mistake.
ConditionTest parse_condition_test(const std::string &text);

/// What a subject is; nothing if there is none of that name.
std::optional<ConditionInfo> subject_info(std::string_view name);

} // namespace beadbook
