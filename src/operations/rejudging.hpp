#pragma once

#include "operations/judging.hpp"

#include <map>

namespace beadbook {

/// By what the coupons are judged beside their own criteria. Nothing of it is stored.
struct RejudgeRequest {
    std::string criteria; ///< another set. Empty: the text that each coupon's last verdict kept is held
                          ///< against the same set as it is now
    std::string class_id; ///< of the other set; empty: the one that is called like the coupon's own
    Selection of;
};

/// A coupon's verdict on one side.
struct VerdictBy {
    std::string set, class_id;
    Verdict verdict = Verdict::cannot_say;
    std::vector<std::string> rules;      ///< that reject, or, where none does, that keep it from an accept
    std::vector<std::string> lacks = {}; ///< of a cannot say: facts, measures and exams that are missing
};

/// A coupon whose verdict differs.
struct Flip {
    std::string mark;
    VerdictBy before, after;
};

struct NotCompared {
    std::string mark, why;
};

/// In how many coupons a rule rejected.
struct RuleDecided {
    std::size_t before = 0, after = 0;
};

struct Rejudged {
    RejudgeRequest request;
    std::size_t compared = 0;
    std::vector<Flip> flips; ///< in the order in which the coupons were registered
    std::vector<NotCompared> left_out;
    std::map<std::string, RuleDecided> rules; ///< of those compared, by "SET: RULE"
};

/// Judges each coupon that is asked for on both sides, in one pass. A coupon that cannot be judged on one of
/// them stops none of the others. Throws DataError: there is no such set.
Rejudged rejudge(Office &office, const RejudgeRequest &request);

} // namespace beadbook
