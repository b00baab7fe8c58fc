#pragma once

#include "operations/writing.hpp"

#include <functional>
#include <map>
#include <string>

namespace beadbook {

/// What says of a welder's skill is said by somebody who can be asked, and who is not that welder, nor
/// another one of whom the record knows nothing else (common practice, no source). `said_of` is a mark or a
/// name, `what` what is done: "grades". Throws Refusal.
void check_vouches(Office &office, const std::string &who, const std::string &said_of,
                   const std::string &what, const std::string &field = "by");

/// Of whom the record knows nothing but that he is a welder does not grade another, nor say what the other
/// holds, nor by which limits he is judged.
void check_no_fellow(Office &office, const std::string &who, const std::string &what,
                     const std::string &field);

/// The same of what may be entered for somebody who is no person: it is not said by that welder.
void check_is_another(Office &office, const std::string &who, const std::string &said_of,
                      const std::string &what, const std::string &field = "by");

/// What an exam found is said, corrected and taken back by another person than who welded the coupon.
void check_may_say_found(Writing &writing, const CouponState &coupon);
/// The same of a finished exam, or of one that is finished so; and if it is another's, by nobody of whom the
/// record says that he may not judge by its method (common practice, no source).
void check_may_judge(Writing &writing, const CouponState &coupon, const ExamRecord &exam);

/// What is said of a coupon that was examined is said otherwise, and the coupon taken back or put back, by
/// another person than who welded it, by what it says and by what it is to say (common practice, no source).
void check_may_describe(Writing &writing, const CouponState &coupon, const std::string &welder_now);

/// Whose coupon it is and whether it is a test is said otherwise, and the coupon taken back or put back, by
/// another person than who welded it, whether or not it was examined: who welded it knows first how it went
/// (common practice, no source).
void check_may_give_away(Writing &writing, const CouponState &coupon);

/// What exams and mechanical tests found is brought in by another person than who welded the coupon, too.
/// Asked of the coupons that an import touches, by their marks, once its entries stand: each is folded once,
/// given to `at_hand`, which may write about it, and let go.
void check_may_bring_in(Writing &writing, const std::map<std::string, std::int64_t> &touched,
                        const std::function<void(const std::string &mark)> &at_hand);

/// Whether a person is that welder, by the mark or by a name that the mark is or was enrolled under, however
/// it is written.
bool is_welder(Office &office, const std::string &person, const std::string &welder);

/// "is the welder", or that he may be and what tells them apart, of who said something of a welder's skill
/// before it was known whose names are whose; empty: he is another person.
std::string as_himself(Office &office, const std::string &person, const std::string &welder);

/// A name of that welder that somebody may take the person's for ("Prof. J. Reef"); empty of whom the record
/// of people knows by that very name.
std::string taken_for_welder(Office &office, const std::string &person, const std::string &welder);

} // namespace beadbook
