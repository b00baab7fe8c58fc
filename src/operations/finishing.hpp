#pragma once

#include "facts/plausibility.hpp"
#include "operations/writing.hpp"

namespace beadbook {

/// Finishes an exam with the number of indications that it found.
struct FinishRequest {
    std::string coupon;
    int exam = 0;                    ///< 0: the one open exam of the coupon
    std::optional<int> found = {};   ///< as the examiner says
    bool as_logged = false;          ///< or as many as are on record
    std::optional<Exam> method = {}; ///< the one open exam by it; else by any
    std::string why = {};            ///< a keeper who is not its examiner says one
    std::string remark = {};         ///< that stood behind `none`: it joins the exam's note
    bool some_logged = false;        ///< as logged, by a person's word that does not mean none
    bool sure = false;               ///< its note or a reason, which reads like a find, is none
};
/// Refused: finished already, another number than is on record, no examiner named, dated before the weld or
/// to come. Unsure: its note or a reason reads like a find that is not logged.
Done<ExamRecord> finish_exam(Writing &writing, const FinishRequest &request);
/// All exams of all coupons that were recorded before exams were finished, as they are logged. What was
/// recorded after the last verdict of such a program (engines 1 and 2) stays open, and is told in the notes.
Done<int> finish_all(Writing &writing, const std::string &why);
/// The number of the one exam by the method that is finished. Throws Refusal: there is none, or several are.
int finished_exam(const CouponState &coupon, Exam method);
/// Opens a finished exam again, for a reason.
Done<ExamRecord> reopen_exam(Writing &writing, const std::string &coupon, int exam, const std::string &why);

/// Whether somebody who signed in would finish what another one examined.
bool is_anothers(const ExamRecord &exam, const Stamp &who);
/// Whether somebody is on record as a keeper, who finishes the exams of others for a reason.
bool finishes_for_others(Office &office, const std::string &name);
/// Who signed in finishes his own exams; those of others a keeper does, for a reason. Throws Refusal.
void check_may_finish(Writing &writing, const ExamRecord &exam, const std::string &why);

/// "2 (MT) and 3 (RT)".
std::string named(const std::vector<const ExamRecord *> &exams);

/// To log one more find under an open exam.
Remedy log_under(const CouponState &coupon, const ExamRecord &exam);
/// What mends a number of finds that is not what is on record: of too many to log the rest, of too few to
/// look at them and withdraw one. Empty if it is right.
std::vector<Remedy> mends_of_number(const CouponState &coupon, const ExamRecord &exam, int found);

/// Adds a note if the exam was finished with another number of finds than is on record now.
void note_contradictions(Writing &writing, const std::string &coupon, int exam,
                         std::vector<std::string> &notes);

/// Refuses a finish: no examiner is named, or as many finds are not on record. Throws Refusal.
void check_finish(const ExamRecord &exam, int found, int on_record);
/// That an exam is dated before its weld; nothing if it is not, or the day of the weld is not told.
std::optional<Unlikely> before_its_weld(const ExamRecord &exam, const CouponRecord &coupon);
/// Refuses an exam of tomorrow. Throws Refusal.
void check_not_to_come(const ExamRecord &exam, Day today);
/// Refuses an exam of tomorrow, or of before the weld. Throws Refusal.
void check_day(const ExamRecord &exam, const CouponRecord &coupon, Day today);

} // namespace beadbook
