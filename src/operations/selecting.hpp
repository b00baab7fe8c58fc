#pragma once

#include "operations/coupon_lines.hpp"
#include "operations/selection.hpp"
#include "operations/shops.hpp"

#include <functional>

namespace beadbook {

class LeftOut;

/// A coupon in the hand of somebody who goes through many: it is read and judged once, and only if more is
/// asked of it than its kept line says.
class CouponAtHand {
public:
    using Read = std::function<CouponState(const std::string &mark)>;
    CouponAtHand(Office &office, std::string mark, Read read, std::optional<CouponLine> kept)
        : office_(office), mark_(std::move(mark)), told_mark_(mark_), read_(std::move(read)),
          line_(std::move(kept)) {}

    /// From now on it is told as one of that shop: its mark, and its welder's.
    void tell_shop(const std::string &shop);

    const std::string &mark() const { return told_mark_; }
    const CouponLine &line();
    const CouponState &coupon();
    /// The same as it leaves the record: it carries what stood against it here, and its exams what is on
    /// record here against their examiners. It is told, too, which tests of its welder failed and are left
    /// out.
    CouponState to_carry(LeftOut &left_out);
    /// By its own criteria, for its own class. Throws StoreError.
    const JudgedOrNot &judged();
    const GradeStanding &grading();
    GradeState grade();
    /// It was withdrawn, and its finds reject it all the same.
    bool withdrawn_reject();

private:
    const CouponState &own_coupon();
    void tell(CouponRecord &record) const;

    Office &office_;
    std::string mark_, told_mark_, shop_;
    Read read_;
    std::optional<CouponLine> line_;    ///< as it is told
    std::optional<CouponState> coupon_; ///< by its own record
    std::optional<CouponState> told_;   ///< the same as it is told, where that differs
    std::optional<JudgedOrNot> judged_;
    std::optional<GradeStanding> grading_;
};

/// Goes through coupons in the order of registration, from one on or back from it, until `take` says that it
/// is enough.
void walk(Office &office, Ledger::LinesAsked asked, const std::function<bool(CouponAtHand &)> &take);
/// The same through these, which are on record.
void walk_these(Office &office, const std::vector<std::string> &marks,
                const std::function<bool(CouponAtHand &)> &take);

/// Throws Refusal (field "from"): the first day comes after the last.
void check_days(const Selection &of);

/// Whether it is asked for.
bool is_meant(const Selection &of, CouponAtHand &one);

/// Hands on each coupon that is asked for, in the order in which they were registered, of several shops one
/// after the other; one that cannot be judged stops none of the others. The only place that applies a
/// selection. Throws Refusal: "from" (its field) after "to", a mark that nobody registered.
void select(const Shops &shops, const Selection &of, const std::function<void(CouponAtHand &)> &take);
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
