#pragma once

#include "criteria/model.hpp"
#include "judge/coupon.hpp"

namespace beadbook {

/// How the first of two limits of one thing measured stands to the second. What the coupon's facts do not
/// tell (a throat, the find's own width) may be anything: then a limit can be stricter for some values only.
enum class LimitRelation : std::uint8_t {
    equal,
    stricter,     ///< everywhere
    looser,       ///< everywhere
    never_looser, ///< stricter for some values of what is not told, equal for others
    never_stricter,
    either,  ///< stricter for some values, looser for others
    unknown, ///< cannot be told exactly: quantities are multiplied
};

/// A limit of kind value, with its rule.
struct LimitOfRule {
    const Rule &rule;
    const Formula &formula;
};

/// The largest number that a limit of a count allows: 3 of "under 4" and of "at most 3".
Exact most_counted(const Exact &limit, Compare compare);

/// Exact: as the judge evaluates where the facts tell both, else over all values that the conditions of the
/// two rules leave. Both compare to the same side, at most or at least. What is
/// counted is whole: "under 4" and "at most 3" are equal. `unit` is the one of the work.
LimitRelation limit_relation(const LimitOfRule &first, const LimitOfRule &second, const Coupon &coupon,
                             Unit unit);

} // namespace beadbook
