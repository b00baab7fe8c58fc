#pragma once

#include "criteria/model.hpp"
#include "facts/coupon_record.hpp"
#include "judge/coupon.hpp"

#include <vector>

namespace beadbook {

/// The coupon with both members so thick, welded through; measured in `unit` where it does not say.
Coupon so_thick(Coupon coupon, std::int64_t nm, Unit unit);

/// Throws Refusal at the field: a thickness is told where every thickness is looked at.
void check_tells_no_thickness(const CouponRecord &coupon);

/// The coupon as it may be where these conditions on its words hold: one for each of the words that fit.
std::vector<Coupon> ways_to_be(const Coupon &coupon, const std::vector<Condition> &conditions);

/// Whether all of these hold for the coupon, as the judge sees it; unknown where its facts do not tell.
Truth truth_for(const std::vector<Condition> &conditions, const Coupon &coupon);

/// Whether the set certainly says nothing of the coupon.
bool outside_scope(const CriteriaSet &set, const Coupon &coupon);

/// 1/64 in apart to 1 in, or 0.25 mm apart to 25 mm; nm, ascending.
std::vector<std::int64_t> usual_thicknesses(Unit unit);

} // namespace beadbook
