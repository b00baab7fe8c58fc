#pragma once

#include "operations/writing.hpp"
#include "technique/practice.hpp"

namespace beadbook {

/// An examination as a person says it.
struct ExamRequest {
    std::string coupon;
    Exam method = Exam::VT;
    std::optional<Day> date; ///< default today
    std::string examiner, level, procedure, note;
    std::string incomplete;              ///< why it does not count; empty if it does
    std::vector<std::string> conditions; ///< name=value
    std::string practice;     ///< that they are held against: a shipped name or a file; may be empty
    std::optional<int> found; ///< finishes it at once with so many finds; only 0 is possible for a new one
    int replaces = 0;         ///< number of the exam that this corrects; 0: a new one
    std::string why;          ///< for a correction
};

/// Conditions that the practice would still ask for, in its order, given what the request says already.
std::vector<std::string> conditions_to_ask(Office &office, const ExamRequest &request);

/// The exam as it stands on record, with why it was not valid if it was not. Notes: conditions whose name
/// looks like a slip.
Done<ExamRecord> record_exam(Writing &writing, const ExamRequest &request);

/// Adds an exam whose record is ready, under the next free number, or its own if that is higher. For imports.
int add_exam(Writing &writing, const std::string &coupon, ExamRecord exam);

/// Finishes an exam with the number of indications that it found.
struct FinishRequest {
    std::string coupon;
    int exam = 0; ///< 0: the one open exam of the coupon
    std::optional<int>
        found; ///< as the examiner says; nothing: as many as are on record, which `as_logged` must confirm
    bool as_logged = false;
};
/// Refused: finished already, another number than is on record, no examiner named, dated before the weld or
/// to come.
Done<ExamRecord> finish_exam(Writing &writing, const FinishRequest &request);
/// All open exams of all coupons, as they are logged: for records that were made before exams were finished.
Done<int> finish_all(Writing &writing, const std::string &why);
/// Opens a finished exam again, for a reason.
Done<ExamRecord> reopen_exam(Writing &writing, const std::string &coupon, int exam, const std::string &why);

/// "2 (MT) and 3 (RT)".
std::string named(const std::vector<const ExamRecord *> &exams);

/// Takes an exam back; refused while it has finds.
void withdraw_exam(Writing &writing, const std::string &coupon, int number, const std::string &why);

} // namespace beadbook
