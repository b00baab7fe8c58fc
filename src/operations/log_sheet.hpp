#pragma once

#include "operations/writing.hpp"

namespace beadbook {

/// Many coupons and exams in one text, as they are written down at the bench:
///
///     VT MT; by A. Field; level II; date 2026-11-25; light=1000 lx
///     T-1 VT undercut l 3/8 d 0.010 at 1-1/2
///     "   MT crack 0.2 at 3
///     T-2..T-15 none
///     T-9 MT incomplete: the yoke failed
///     T-7,T-8 incomplete: no light
///
/// A head names the methods, then who and how; what a later head does not say stays as it was, but for
/// practice, conditions, equipment, note and `incomplete: why` (of every exam), which are of one head. Below
/// it a line is a coupon (or " for the same), the method if the head has several, and a find
/// (facts/log_line.hpp), `none` (a remark behind it is the exam's note), or `incomplete: why`; the last two
/// may be of several coupons and methods, and without a method are of all of the head. Each coupon that is
/// named gets an exam by every method of the head, and it must be said what each found; so the exams are
/// finished. One of that method, day and person that is open already is gone on with: what the head leaves
/// out stands as it was said of it. `#` begins a comment.
struct SheetRequest {
    std::string text;
    std::string name = "sheet"; ///< for messages
    bool sure = false;          ///< what nobody would believe at first sight is meant so
    bool again = false;         ///< exams of that coupon, method, day and person on record are other ones
};
struct SheetTaken {
    struct Part {
        std::string coupon;
        ExamRecord exam;
        std::vector<IndicationRecord> found;
    };
    std::vector<Part> parts; ///< in the order of the sheet
};
/// All or nothing; every bad line is named. Throws Refusal, Unsure.
Done<SheetTaken> take_sheet(Writing &writing, const SheetRequest &request);

} // namespace beadbook
