#pragma once

#include "facts/coupon_record.hpp"
#include "operations/catalogue.hpp"

namespace beadbook {

/// What one rule allows over the thickness, of classes that are alike.
struct LimitCurve {
    using Values = std::vector<std::optional<Exact>>; ///< by thickness; nothing where the rule does not speak

    std::vector<std::size_t> classes; ///< by index in the set
    Values at;
    std::vector<bool> open; ///< by thickness: the rule speaks, and its limit hangs on what is not told
    Values under, over; ///< 1 nm thinner and thicker: other than at that thickness where a step lies there
};
struct CurvedRule {
    std::size_t rule = 0; ///< index in the set
    std::vector<LimitCurve> curves;
};
/// A rule of which no curve is drawn, and why.
struct UncurvedRule {
    std::size_t rule = 0;
    Missing lacks;          ///< facts of the coupon that it hangs on
    bool of_finds = false;  ///< its limit follows from the find itself
    bool no_number = false; ///< it allows, forbids or leaves to a person: its limits in words say all
    bool not_so = false;    ///< it is not for a coupon as described
};
/// Limits over thickness, in the set's unit. Both members are as thick as that, and welded through.
struct LimitCurves {
    std::shared_ptr<const CriteriaSet> set;
    CouponRecord coupon;              ///< what else is known of it
    std::vector<std::size_t> classes; ///< that are shown, by index: all, or the one that the coupon seeks
    /// nm, ascending: 1/64 in or 0.25 mm apart, to 1 in or 25 mm; twice, four or eight times that for a set
    /// that covers more and ends by then
    std::vector<std::int64_t> thickness;
    std::vector<std::size_t> told;    ///< of these, by index: those that a table shows
    std::vector<CurvedRule> rules;    ///< in the set's order
    std::vector<UncurvedRule> others; ///< the rest, in the same order
};

/// Each limit worked out as the judge does, for every thickness anew; what hangs on a fact that is not known
/// is left out and says which. Where a condition cannot be decided the limit is drawn: the condition stands
/// beside it. Of a coupon that seeks a class that one alone. Throws Refusal at a thickness that is told, and
/// at a class that the set has not (field "class").
LimitCurves limit_curves(std::shared_ptr<const CriteriaSet> set, const CouponRecord &coupon);

} // namespace beadbook
