#pragma once

#include "facts/coupon_state.hpp"
#include "facts/plausibility.hpp"

#include <optional>
#include <string>
#include <vector>

namespace beadbook {

// What people wrote in words of their own: no verdict goes by it.

/// All of it that is on record about the coupon, each with what it is about; what the program wrote is not.
std::vector<std::string> said_beside(const CouponState &coupon);
/// Of that what has entries of its own, which do not go along when the coupon leaves the record: remarks, and
/// reasons that its exams and finds do not carry.
std::vector<std::string> said_and_left(const CouponState &coupon);
/// "written beside it, and judged by nobody: ..."; empty if nothing is.
std::string said_beside_words(const std::vector<std::string> &said);

constexpr std::string_view why_like_a_find = "why-like-a-find";

/// The note of an exam (number 0: none yet), and the reasons that are on record of it or are said now, that
/// read like a find of which none is logged, and a procedure that reads like one: all are asked about.
void hold_words_against_finds(const CouponState &coupon, const ExamRecord &exam, int number,
                              std::optional<int> found, const std::string &why,
                              std::vector<Unlikely> &against);
/// The same of an exam that comes from a file, whose finds are not at hand: of one that found none.
void hold_words_against_none(const ExamRecord &exam, std::optional<int> found,
                             std::vector<Unlikely> &against);
/// The same of a reason that is said of a find as it was and as it is to be.
std::vector<Unlikely> with_why(std::vector<Unlikely> found, const std::string &why,
                               const std::vector<IndicationRecord> &finds);

} // namespace beadbook
