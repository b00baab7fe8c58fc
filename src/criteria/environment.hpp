#pragma once

#include "criteria/quantity_name.hpp"
#include "language/formula.hpp"

#include <limits>

namespace beadbook {

/// Numbers known at one moment, looked up by quantity. A coupon's stay in one table that is shared by all
/// formulas; an indication's, a pair's and a group's are laid over it.
struct Environment {
    class Values {
    public:
        /// What was measured is a whole number of base units; one that does not fit is left unknown.
        void set(Quantity q, const Exact &v) {
            constexpr std::int64_t most = std::numeric_limits<std::int64_t>::max();
            if (!v.is_whole() || v > Exact(most) || v < Exact(-most)) return forget(q);
            set_whole(q, static_cast<std::int64_t>(v.num()));
        }
        void set_whole(Quantity q, std::int64_t v) {
            value_[index_of(q)] = v;
            known_ |= std::uint32_t{1} << index_of(q);
        }
        void forget(Quantity q) { known_ &= ~(std::uint32_t{1} << index_of(q)); }
        void clear() { known_ = 0; }
        /// The unit in which the work is measured, for values that a standard prints in two; if it is fixed.
        void measure_in(std::optional<Unit> unit) { unit_ = unit; }
        std::optional<Unit> measured_in() const { return unit_; }
        bool has(Quantity q) const { return (known_ >> index_of(q)) & 1u; }
        std::int64_t operator[](Quantity q) const { return value_[index_of(q)]; }

    private:
        std::array<std::int64_t, quantity_count> value_{};
        std::uint32_t known_ = 0;
        std::optional<Unit> unit_;
    };
    const Values &coupon;
    const Values *local = nullptr; ///< indication, pair and group

    std::optional<Unit> measured_in() const { return coupon.measured_in(); }
    bool has(Slot slot) const { return home_of(slot).has(static_cast<Quantity>(slot)); }
    std::int64_t operator[](Slot slot) const { return home_of(slot)[static_cast<Quantity>(slot)]; }

private:
    const Values &home_of(Slot slot) const { return slot < coupon_quantities || !local ? coupon : *local; }
};

extern template Evaluated Formula::evaluate<Environment>(const Environment &) const;
extern template Evaluated Formula::limit<Environment>(const Environment &, Compare) const;

constexpr Slot slot_of(Quantity q) { return static_cast<Slot>(q); }
/// A lone find has the longest possible way to go.
constexpr bool is_way_to_nearest(Quantity q) {
    return q == Quantity::nearest_gap || q == Quantity::nearest_like_gap;
}
/// The same of what may be no quantity alone.
constexpr bool is_way_to_nearest(std::optional<Slot> slot) {
    return slot && is_way_to_nearest(static_cast<Quantity>(*slot));
}
/// Of a formula, or either side of a condition.
template <class T>
bool uses_way_to_nearest(const T &of) {
    return of.uses(slot_of(Quantity::nearest_gap)) || of.uses(slot_of(Quantity::nearest_like_gap));
}
Formula formula_of(Quantity q);
std::vector<Quantity> quantities_of(const Formula &f);
/// Whether it speaks of anything of that scope.
bool uses_scope(const Formula &f, Scope scope);
/// Speaks of the coupon only, so it has one value for all indications.
inline bool of_coupon(const Formula &f) { return f.uses_only_below(coupon_quantities); }

} // namespace beadbook
