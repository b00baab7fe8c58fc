#pragma once

#include "facts/log_line.hpp"
#include "operations/writing.hpp"

namespace beadbook {

/// Lines of a log, one indication each (facts/log_line.hpp); blank lines and those that begin with # are
/// skipped.
struct LogRequest {
    std::string coupon;
    int exam = 0;              ///< which exam found them; 0: the one that is open
    std::string text;          ///< the lines
    std::string name = "line"; ///< of the file, for messages
};
struct Logged {
    std::string coupon;
    int exam = 0;
    std::vector<IndicationRecord> indications;
    std::optional<int> finished; ///< the exam was finished as well, with so many finds
};
/// All lines or none: every bad line is named with its column. Notes: finds that the process can hardly make.
Done<Logged> log_lines(Writing &writing, const LogRequest &request);

/// Finds that the coupon's process can hardly make, one sentence each.
std::vector<std::string> doubts_about(const CouponRecord &coupon,
                                      const std::vector<IndicationRecord> &indications);

/// The exam that a log would go to. Throws DataError: none yet, or not that one.
int exam_for(const CouponState &coupon, int number);

/// Every line read, or one refusal that names every bad line.
std::vector<IndicationRecord> parse_log(const std::string &text, const std::string &name,
                                        const WeldLine &weld, Unit unit);

/// Adds indications whose records are ready, each under the next free number, or its own if that is higher.
std::vector<int> add_indications(Writing &writing, const std::string &coupon, int exam,
                                 std::vector<IndicationRecord> indications);

/// Instead of an indication, the one of a line. The old one is kept.
Done<Logged> correct_indication(Writing &writing, const std::string &coupon, int number,
                                const std::string &line, const std::string &why);
void withdraw_indication(Writing &writing, const std::string &coupon, int number, const std::string &why);

} // namespace beadbook
