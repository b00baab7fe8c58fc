#pragma once

#include "operations/office.hpp"

#include <set>

namespace beadbook {

/// The verdict of the class that counts, with its reasons.
struct JudgedNow {
    Verdict verdict = Verdict::cannot_say;
    std::vector<Finding> findings;
};
/// Judged afresh: the graded class by the criteria of its grade, else the one that is sought. Nothing if it
/// cannot be judged.
std::optional<JudgedNow> judged_now(Office &office, CouponState coupon);

/// The coupon as it stood whenever it was graded failed, with that grade; oldest first.
std::vector<CouponState> graded_failed(Office &office, const std::vector<Entry> &history);

/// By what a coupon failed.
struct FailedBy {
    std::vector<std::string> methods; ///< and "mechanical"
    std::set<int> exams;              ///< of whose finds one rejected it; empty if no find tells
};

/// As it stood whenever it was graded failed, and before each correction of what had been finished until
/// then, so that what is entered later adds nothing and takes nothing away; one that was never graded so, as
/// it stands, too. All it was examined by, if nothing tells them apart.
FailedBy failed_by(Office &office, const std::vector<Entry> &history, const CouponState &coupon,
                   bool bends_failed);

} // namespace beadbook
