#pragma once

#include "qualify/range.hpp"
#include "qualify/set_cover.hpp"
#include "qualify/work.hpp"

namespace beadbook {

/// One coupon to weld. Traits that it does not name are free.
struct PlannedCoupon {
    Weld test;
    std::vector<std::size_t> jobs; ///< that it is needed for, by index
};

/// Work that no coupon covers, and why the nearest one does not.
struct UncoveredJob {
    std::size_t job = 0;
    Weld work;                        ///< one weld of it
    std::optional<Weld> nearest;      ///< the coupon that fails in the fewest variables
    std::vector<VariableCover> fails; ///< of the nearest
};

/// Work that what is held does not cover, and why the nearest qualification does not.
struct Missed {
    std::size_t job = 0;
    Weld work; ///< one weld of it
    std::size_t held = 0;
    std::vector<VariableCover> fails;
};

/// Work that is planned for, and that no coupon could cover for certain: it spans sizes of which no limit was
/// read.
struct UncertainJob {
    std::size_t job = 0;
    const UnreadTrait *unread = nullptr;
};

struct Plan {
    std::vector<PlannedCoupon> coupons;
    std::vector<UncertainJob> uncertain;
    std::vector<UncoveredJob> uncovered; ///< at most one a job
    std::vector<std::size_t> held_jobs;  ///< covered by what the welder holds already
    std::vector<Missed> missed;          ///< the other jobs, if anything is held
    std::size_t candidates = 0;          ///< coupons that were weighed
    bool minimal = true;                 ///< proven: no fewer coupons do
    std::size_t at_least = 0;            ///< proven: no fewer than this do
    std::vector<std::string> notes;      ///< sentences on what went wrong with the solver
};

/// The fewest coupons that cover all work that any coupon covers, or, if that is too hard to prove, the
/// fewest found and how many are needed at least.
///
/// Each job's ranges are cut at every edge where any coupon's range begins or ends, so that a coupon
/// covers each cell whole or not at all; several coupons may cover one job together. Coupons come from the
/// rules' words and from sizes: the stock, else every size that the work names and the rules' usual ones.
/// Where no limit of a size was read, a job of one size wants a coupon of that size, and one of several is
/// uncertain. `held` are ranges that the welder has already. Hard plans are put to `solver`, if there is one,
/// for at most `patience`; easy ones are settled here. Throws InputError if there are too many coupons to
/// weigh.
Plan plan_tests(const Work &work, const std::vector<std::vector<VariableRange>> &held = {},
                const CoverSolver &solver = {}, std::chrono::milliseconds patience = usual_patience);

} // namespace beadbook
