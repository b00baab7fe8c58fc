#pragma once

#include "facts/coupon_record.hpp"

namespace beadbook {

/// A size of a fillet that is told of a groove weld in what is said to be a butt, where no fillet lies:
/// "fillet-size 0.2 in, joint groove, joint-form butt"; else empty. In other forms a fillet may lie over the
/// groove. Common practice, no source.
std::string fillet_of_butt(const CouponRecord &coupon);

} // namespace beadbook
