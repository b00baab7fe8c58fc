#pragma once

#include "operations/judging.hpp"

namespace beadbook {

/// "the verdict for class 2 was 'accept' when it was given and is 'reject' now".
std::string grade_moved_words(const std::string &class_id, const std::string &was, const std::string &now);

/// "it is described otherwise since it was graded: process and position".
std::string described_words(const std::vector<std::string> &fields);

/// What is on record of a grade that was set aside begins so.
inline constexpr std::string_view to_grade_again = "to be graded again";

/// That a grade passed what the verdict does not accept, and whose word that is: "the verdict for class 3 is
/// 'reject', and J. Quay graded it passed on 2026-11-20: remark".
std::string against_words(const std::string &class_id, const std::string &now, const std::string &by,
                          const std::string &on, const std::string &remark);

/// Judges afresh by the criteria text that the grade went by.
GradeStanding standing_of_grade(Office &office, const CouponState &coupon);

} // namespace beadbook
