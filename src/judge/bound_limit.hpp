#pragma once

#include "criteria/model.hpp"
#include "judge/coupon.hpp"

namespace beadbook {

/// What one class allows by one rule, with the coupon's own numbers put in. Nearly all limits are then a
/// number, or a multiple of one measure of the find or pair; only others are computed by their formula each
/// time.
class BoundLimit {
public:
    BoundLimit() = default;
    /// Of `limit` with Limit::Kind::value; what is referred to outlives it.
    BoundLimit(const Limit &limit, Compare compare, const Coupon &coupon);

    /// Before the measures of a find, or of a pair of neighbours.
    Evaluated of(const Environment &measures) const {
        if (by_ == By::coupon) return value_;
        return by_ == By::multiple ? multiple(measures) : formula_->limit(measures, compare_);
    }
    /// Where no find is at hand.
    const Evaluated &of_coupon() const { return value_; }

private:
    enum class By : std::uint8_t { coupon, multiple, formula };

    Evaluated multiple(const Environment &measures) const {
        if (!measures.has(of_)) return {0, Missing::quantity(of_)};
        if (whole_factor_) return {Exact::whole(static_cast<Int128>(measures[of_]) * *whole_factor_), {}};
        return {Exact(measures[of_]) * value_.value, {}};
    }

    By by_ = By::coupon;
    Compare compare_ = Compare::at_most;
    Slot of_ = 0;                              ///< By::multiple: of which measure
    Evaluated value_;                          ///< By::multiple: the factor
    std::optional<std::int64_t> whole_factor_; ///< By::multiple: if it is a whole number
    const Formula *formula_ = nullptr;
};

} // namespace beadbook
