#pragma once

#include "facts/log_line.hpp"
#include "operations/writing.hpp"

namespace beadbook {

/// Lines of a log, one indication each (facts/log_line.hpp); blank lines and comments are skipped.
struct LogRequest {
    std::string coupon;
    int exam = 0;              ///< which exam found them; 0: the open one, of the method that a line names
    std::string text;          ///< the lines
    std::string name = "line"; ///< of the file, for messages
    bool sure = false;         ///< what nobody would believe at first sight is meant so
    bool is_file = false;      ///< the lines came as one text, which is noticed if it comes again
    bool again = false;        ///< what stands already is meant to come again
    bool may_finish = false;   ///< a line `none` or `VT none` finishes its exam
};
struct Logged {
    std::string coupon;
    int exam = 0; ///< of the first find, or of the first that found none
    std::vector<IndicationRecord> indications;
    std::optional<int> finished;             ///< the exams were finished as well, with so many finds in all
    std::vector<int> none = {};              ///< exams that are finished with none found
    std::vector<std::string> none_said = {}; ///< of each the remark behind `none`

    /// That the lines went to, by number.
    std::vector<int> exams() const;
};
/// All lines or none: every bad line is named with its column. A line that gives a number (#7) is that find,
/// and refused if the number was used. So is all that the welder of the coupon would log. Notes: finds that
/// the process can hardly make. Throws Unsure.
Done<Logged> log_lines(Writing &writing, const LogRequest &request);

/// How the lines would be taken if `who` logged them now: nothing is stored. Refuses what log_lines refuses.
Done<Logged> read_lines(Office &office, const std::string &who, const LogRequest &request);

/// Finds that the coupon's process can hardly make, one sentence each.
std::vector<std::string> doubts_about(const CouponRecord &coupon,
                                      const std::vector<IndicationRecord> &indications);

/// The exam that a log would go to: that number, else the one that is open, else the one that is open and
/// that `who` does. Throws DataError: none yet, not that one, or it could be several.
int exam_for(const CouponState &coupon, int number, const std::string &who = "",
             std::optional<Exam> method = {});

/// Every line read, or one refusal that names every bad line.
struct ParsedLog {
    std::vector<LogLine> lines;
    std::vector<int> numbers;              ///< of each in the text, from 1
    std::vector<std::optional<Exam>> none; ///< lines `none` and `VT none`, where they are asked for
    std::vector<std::string> none_said;    ///< of each the remark
};
ParsedLog parse_log(const std::string &text, const std::string &name, const WeldLine &weld,
                    std::optional<Unit> unit, bool may_finish = false);

/// The lines of a text by which it is known again: without blanks around, empty ones and comments.
std::string hash_of_lines(const std::string &text);

/// Instead of an indication, the one of a line. The old one is kept. Throws Unsure.
Done<Logged> correct_indication(Writing &writing, const std::string &coupon, int number,
                                const std::string &line, const std::string &why, bool sure = false);
/// The notes tell that its exam, if it was finished, does not count until it is opened again.
Done<int> withdraw_indication(Writing &writing, const std::string &coupon, int number,
                              const std::string &why);
/// The same where no reason is asked of a slip: it is the last that was entered on the coupon, by oneself.
Done<int> undo_indication(Writing &writing, const std::string &coupon, int number, const std::string &why);
/// Whether a find is a slip of that person, the last thing entered about its coupon: what is undone at once
/// needs no reason.
bool undone_without_reason(Office &office, const CouponState &state, int number, const std::string &who);

} // namespace beadbook
