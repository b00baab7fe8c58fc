#pragma once

#include "operations/office.hpp"

namespace beadbook {

/// What speaks against an exam by whom, with what and on which metal it was made.
struct Objection {
    std::string why;  ///< in a sentence; empty: nothing does
    Missing hangs_on; ///< what of the coupon would tell whether it counts; none if it certainly does not
};

/// As the record stands, or stood before an entry, all by common practice, no source, where no practice that
/// the exam goes by says otherwise: a magnetic method on metal that is, or may be, not magnetic; nobody who
/// finished it; an examiner, or who finished it, who welded the coupon, or whom the record of people does not
/// entitle; equipment that was out of use or of calibration; conditions that were over on its day, or of
/// which there was nothing.
Objection objection_to(Office &office, const CouponRecord &coupon, const ExamRecord &exam,
                       std::optional<std::int64_t> before = {});

/// What the records of people and welders say against its examiner by now, as the id that an export has to
/// carry, since no other record could tell (why_not_entitled); empty if they say nothing.
std::string against_examiner(Office &office, const CouponRecord &coupon, const ExamRecord &exam);

/// Why somebody who is not its examiner, and whom the record of people knows as one who examines, may not
/// judge by the exam's method on a day; empty if he may, or is known as no examiner at all.
std::string against_judging(Office &office, const ExamRecord &exam, const std::string &who, Day on);

/// The equipment of an exam as it is on record by now, whatever was on record when the exam was entered.
void read_equipment_anew(Office &office, ExamRecord &exam, std::optional<std::int64_t> before = {});

/// The names that a text may stand for: itself, and those enrolled under the marks that it holds.
std::vector<std::string> names_behind(Office &office, const std::string &text,
                                      std::optional<std::int64_t> before = {});

/// Whether they are one: by name, by the mark that the coupon gives, or by the name enrolled under it.
bool welded_by(Office &office, const CouponRecord &coupon, const std::string &person,
               std::optional<std::int64_t> before = {});

/// That the vision test which an exam names was taken off the record of its examiner; empty: it was not.
std::string vision_taken_off(Office &office, const ExamRecord &exam, std::optional<std::int64_t> before);

/// That whoever finished the exam welded the coupon, as nobody could tell when it was entered; empty: not so.
std::string finished_by_welder(Office &office, const CouponRecord &coupon, const ExamRecord &exam,
                               std::optional<std::int64_t> before);

/// Why its own conditions show that not all of the weld can have been seen (no image quality indicator, one
/// exposure through both walls of a girth weld), where its practice does not rule that; empty: they do not.
std::string not_seen(Office &office, const CouponRecord &coupon, const ExamRecord &exam);

/// Why the ninth engine did not count an exam: a calibration that was over by what was on record when the
/// exam was entered, or a certificate that the record of people took away since.
std::string objection_of_ninth(Office &office, const ExamRecord &exam, std::int64_t before);

} // namespace beadbook
