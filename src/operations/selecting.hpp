#pragma once

#include "operations/grade_standing.hpp"
#include "operations/selection.hpp"

#include <functional>

namespace beadbook {

/// A coupon in the hand of somebody who goes through many: it is judged once, and only if that is asked for.
class CouponAtHand {
public:
    CouponAtHand(Office &office, const CouponState &coupon) : office_(office), coupon_(coupon) {}

    const CouponState &coupon() const { return coupon_; }
    /// By its own criteria, for its own class. Throws StoreError.
    const JudgedOrNot &judged();
    const GradeStanding &grading();
    GradeState grade();

private:
    Office &office_;
    const CouponState &coupon_;
    std::optional<JudgedOrNot> judged_;
    std::optional<GradeStanding> grading_;
};

/// Whether it is asked for.
bool is_meant(const Selection &of, CouponAtHand &one);

/// Hands on each coupon that is asked for, in the order in which they were registered; one that cannot be
/// judged stops none of the others. The only place that applies a selection. Throws Refusal (field "from"):
/// after "to".
void select(Office &office, const Selection &of, const std::function<void(CouponAtHand &)> &take);
/// The same within a transaction. `take` may write about the coupon at hand after it has looked at it.
void select(Writing &writing, const Selection &of, const std::function<void(CouponAtHand &)> &take);

/// What a selection asks for and no coupon on record is: one sentence a word, with the nearest that there is.
/// Meant for an empty list, which a slip of the pen makes as well.
std::vector<std::string> unknown_words(Office &office, const Selection &of);

} // namespace beadbook
