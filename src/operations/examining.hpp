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
    std::string incomplete;                  ///< why it does not count; empty or "no" if it does
    std::vector<std::string> conditions;     ///< name=value
    std::vector<std::string> equipment = {}; ///< serial numbers
    bool as_before = false;   ///< what is left out is taken from the examiner's last exam of the method
    std::string practice;     ///< that they are held against: a shipped name or a file; may be empty
    std::optional<int> found; ///< finishes it at once with so many finds; only 0 is possible for a new one
    int replaces = 0;         ///< number of the exam that this corrects; 0: a new one. What is left out is
                              ///< taken over from it, but for how many it found
    bool found_as_before = false; ///< `found` is what the exam in whose place it stands was finished with:
                                  ///< asked about (field "sure") where that did not count, and now does
    bool says_all = false;        ///< in place of another: what a page shows and is left empty is meant so
    std::string why;              ///< for a correction
    bool sure = false;            ///< what nobody would believe at first sight is meant so
    bool replaces_last = false;   ///< of each coupon (record_exams) its last exam by the method
};

/// Conditions that the practice would still ask for, in its order, given what the request says already.
std::vector<std::string> conditions_to_ask(Office &office, const ExamRequest &request);

/// The exam as it stands on record, with why it was not valid if it was not. Level, certificate and vision
/// test of an examiner who is on record, and the calibrations of the equipment, are taken from there
/// (on_record.hpp); one who is not entitled is refused until it is meant so (field "sure"), and then the exam
/// does not count. Notes: what was filled in, doubts about the equipment, conditions whose name looks like a
/// slip.
Done<ExamRecord> record_exam(Writing &writing, const ExamRequest &request);

/// An exam whose record comes from elsewhere, an import say, held to what record_exam asks. One that is said
/// to be finished, and by nobody, is open. Throws DataError.
struct ReadyExam {
    ExamRecord record;                        ///< with the hash of its practice
    std::shared_ptr<const Practice> practice; ///< whose text is to be kept with it; null: none, or not here
    std::vector<std::string> notes;
};
/// `sure`, or the rules that the record names in its own `sure`, set aside what nobody would believe.
ReadyExam ready_exam(Office &office, const CouponRecord &coupon, ExamRecord exam, bool sure = false);

/// Takes an exam back; refused while it has finds.
void withdraw_exam(Writing &writing, const std::string &coupon, int number, const std::string &why);

} // namespace beadbook
