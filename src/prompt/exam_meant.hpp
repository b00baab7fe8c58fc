#pragma once

#include "operations/log_words.hpp"

namespace beadbook {

/// "VT or MT", with what stands between them.
std::string names_of(const std::vector<Exam> &methods, const std::string &between);
/// "type 'VT finish' or 'MT none'": of each open exam the words that finish it as it is logged.
std::string ways_to_finish(const CouponState &coupon);

/// What is open of a coupon that a sitting goes to, and what may be typed; and what may not by a `who` that
/// names nobody.
std::string greeting_of(Office &office, const std::string &who, const CouponState &coupon, int exam);
/// ", coupon T-7 still open: exam 1 (VT)" of each of the coupons; empty where nothing is.
std::string still_open(Office &office, const std::vector<std::string> &marks);

/// "  #3 MT crack 0.2 at 3": a find as it is shown, with its method where another exam is open too, or found
/// some.
std::string find_shown(const CouponState &coupon, const IndicationRecord &find);

/// The exam that `none`, `finish` or a method alone is of; `current` is that of the sitting, or 0. Throws
/// InputError: none, or several.
int exam_meant(const CouponState &coupon, int current, const LogOrder &order);
/// The exam that `on T-8 2` or `on T-8 VT` names; 0 if it names none. Throws as that.
int exam_gone_to(Office &office, const LogOrder &order);
/// The open exams that `all` finishes: those by the methods of the sitting, else the current one, else all.
/// Throws InputError: none of them is open.
std::vector<int> exams_of_sitting(const CouponState &coupon, const std::vector<Exam> &methods, int current);
/// The finished exam that `reopen` is of. Throws InputError: none, or several.
int finished_meant(const CouponState &coupon, int current, const LogOrder &order);
/// That nothing of the coupon can be logged, and which exam may be opened again.
Refusal none_open_to_log(const CouponState &coupon);
/// The one exam by a method, open or finished. Throws Refusal.
int exam_by(const CouponState &coupon, Exam method);

} // namespace beadbook
