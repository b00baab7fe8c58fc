#pragma once

#include "facts/coupon_state.hpp"
#include "operations/examining.hpp"

namespace beadbook {

// What words of the command line mean by an exam. All throw UsageError.

/// A number of finds, or "none".
int found_word(const std::string &word);
/// The number of an exam, or the method of the one exam by it.
int exam_word(const CouponState &coupon, const std::string &word);
/// What an exam stands in place of: the number of one, or "last".
void take_replaced(const std::string &word, ExamRequest &request);
/// Methods by their short names: VT, or VT,MT.
std::vector<Exam> method_words(std::string list);

} // namespace beadbook
