#pragma once

#include "web/form.hpp"

namespace beadbook {

/// A control for each field of a coupon: those that nearly every coupon has first, the rest folded away.
void add_coupon_fields(Form &form, Catalogue &catalogue, const CouponRecord &known);
/// What a form says of a coupon, by the names of its fields; what is left empty is left out.
/// `known`: of what the form was filled in.
std::map<std::string, std::string> coupon_fields_in(const Visit &visit, const CouponRecord &known);

} // namespace beadbook
