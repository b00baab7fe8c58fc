#pragma once

#include "operations/judging.hpp"
#include "operations/to_examine.hpp"
#include "report/document.hpp"

#include <string>

namespace beadbook {

class Visit;

/// Pieces that several pages of a coupon share, as HTML.
std::string coupon_path(const std::string &mark);
std::string exam_path(const std::string &mark, int exam);

/// What it is, in a line: who welded it, joint, process.
std::string about(Office &office, const CouponRecord &coupon);
/// A button for each exam that is open, and for each that is required and not begun.
std::string exam_buttons(const Visit &visit, const ToExamine &to_do);

/// The weld with its finds, to be tapped; as the class sought judges them, if there is one.
std::string map_part(const CouponState &coupon, const JudgedOrNot &judged, bool live = true);
/// The same for the eye alone, a tube also as a ring; nothing if nothing was found.
std::string map_to_look_at(const CouponState &coupon, const JudgedOrNot &judged);

/// What a sheet tells of the coupon, each of its exams with the way to its page.
std::string sheet_part(Document sheet, const std::string &mark);

/// Every class with its verdict, or why there is none.
std::string verdict_line(const JudgedOrNot &judged);
/// The reasons, what is missing and what it rests on, as the judgement is told everywhere; folded away if not
/// `open`.
std::string verdict_parts(const Judged &judged, bool open = true);

} // namespace beadbook
