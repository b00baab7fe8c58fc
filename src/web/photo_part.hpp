#pragma once

#include "facts/coupon_state.hpp"
#include "web/visit.hpp"

namespace beadbook {

/// The photos of a coupon that stand, each by the find that it shows; nothing if there is none. They are
/// fetched below `path`.
std::string photos_part(const CouponState &coupon, const std::string &path);
/// The same for who may also take one back.
std::string photos_to_mend(Visit &visit, const CouponState &coupon);
/// To take one, or to choose a file.
std::string photo_form(Visit &visit, const CouponState &coupon);

/// The bytes of the photo that the path names by its hash; whether the visitor may see the coupon was asked.
/// Throws Refusal: there is none, or it was withdrawn.
Answer photo_answer(Visit &visit);

} // namespace beadbook
