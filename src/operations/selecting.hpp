#pragma once

#include "operations/coupon_lines.hpp"
#include "operations/selection.hpp"

#include <functional>

namespace beadbook {

/// A coupon in the hand of somebody who goes through many: it is read and judged once, and only if more is
/// asked of it than its kept line says.
class CouponAtHand {
public:
    using Read = std::function<CouponState(const std::string &mark)>;
    CouponAtHand(Office &office, std::string mark, Read read, std::optional<CouponLine> kept)
        : office_(office), mark_(std::move(mark)), read_(std::move(read)), line_(std::move(kept)) {}

    const std::string &mark() const { return mark_; }
    const CouponLine &line();
    const CouponState &coupon();
    /// By its own criteria, for its own class. Throws StoreError.
    const JudgedOrNot &judged();
    const GradeStanding &grading();
    GradeState grade();

private:
    Office &office_;
    std::string mark_;
    Read read_;
    std::optional<CouponLine> line_;
    std::optional<CouponState> coupon_;
    std::optional<JudgedOrNot> judged_;
    std::optional<GradeStanding> grading_;
};

/// Goes through coupons in the order of registration, from one on or back from it, until `take` says that it
/// is enough.
void walk(Office &office, Ledger::LinesAsked asked, const std::function<bool(CouponAtHand &)> &take);

/// Throws Refusal (field "from"): the first day comes after the last.
void check_days(const Selection &of);

/// Whether it is asked for.
bool is_meant(const Selection &of, CouponAtHand &one);

/// Hands on each coupon that is asked for, in the order in which they were registered; one that cannot be
/// judged stops none of the others. The only place that applies a selection. Throws Refusal (field "from"):
/// after "to".
void select(Office &office, const Selection &of, const std::function<void(CouponAtHand &)> &take);
/// The same within a transaction. `take` may write about the coupon at hand after it has looked at it.
void select(Writing &writing, const Selection &of, const std::function<void(CouponAtHand &)> &take);

/// The newest coupons that are asked for, at most so many, oldest first.
struct Newest {
    struct One {
        CouponLine coupon;
        GradeState grade = GradeState::none;
    };
    std::vector<One> coupons;
    bool more = false; ///< older ones are as asked for too, and left out
};
Newest newest(Office &office, const Selection &of, std::size_t most);

/// What a selection asks for and no coupon on record is: one sentence a word, with the nearest that there is.
/// Meant for an empty list, which a slip of the pen makes as well.
std::vector<std::string> unknown_words(Office &office, const Selection &of);

} // namespace beadbook
