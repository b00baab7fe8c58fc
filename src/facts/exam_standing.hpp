#pragma once

#include "facts/exam_record.hpp"

#include <optional>
#include <string>

namespace beadbook {

/// Why an exam cannot stand for "examined", as far as its own record says; empty if nothing speaks against
/// it. `finds` is the number of indications on record under it.
///
/// It must be finished with as many finds as are on record, by a named examiner who may judge alone, on a day
/// that is not before the weld; nor may the record of people speak against the examiner (person_record.hpp).
/// That level I may not judge alone, and that levels II and III and certified welding inspectors (for VT)
/// may, is common practice, no source; a practice that says otherwise is held against the exam as well.
std::string why_not_examined(const ExamRecord &exam, const CouponRecord &coupon, int finds);

/// Fills in what follows from its own record: why it is open, whether what it found is all on record, and
/// whether it says otherwise than its entries.
void settle_exam(ExamRecord &exam, const CouponRecord &coupon, int finds);

/// What in the text keeps it from naming one level: a word that is neither I to III, 1 to 3 or a certified
/// welding inspector nor goes with one (level, a method, a scheme), a second level, or all of it if none is
/// named. Empty if it names one.
std::string no_word_of_level(const std::string &level);

/// Whether two texts name the same level: "II", "Level 2".
bool same_level(const std::string &a, const std::string &b);
/// 1 to 3, a certified welding inspector as 2; 0 if the text names no level.
int rank_of_level(const std::string &level);

/// May somebody of this level judge alone? Nothing if the level is not known.
std::optional<bool> may_judge_alone(Exam method, const std::string &level);

} // namespace beadbook
