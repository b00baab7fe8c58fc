#pragma once

#include "facts/coupon_line.hpp"

#include <string>

/// What lists say of a coupon, as it is kept beside the entries. It is read back only by the program that
/// wrote it, so it holds also what entries must not: words.
namespace beadbook::codec {

std::string body_of(const CouponLine &line);
/// Throws StoreError: damaged.
CouponLine line_from(const std::string &body);

} // namespace beadbook::codec
