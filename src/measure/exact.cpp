#include "measure/exact.hpp"

#include <limits>
#include <numeric>

namespace beadbook {
namespace {

bool narrow(Int128 v) {
    return v >= std::numeric_limits<std::int64_t>::min() + 1 && v <= std::numeric_limits<std::int64_t>::max();
}

Int128 mul(Int128 a, Int128 b) {
    if (narrow(a) && narrow(b))
        return static_cast<Int128>(static_cast<std::int64_t>(a)) * static_cast<std::int64_t>(b);
    Int128 out;
    if (__builtin_mul_overflow(a, b, &out)) throw OutOfRange();
    return out;
}

Int128 add(Int128 a, Int128 b) {
    Int128 out;
    if (__builtin_add_overflow(a, b, &out)) throw OutOfRange();
    return out;
}

Int128 gcd(Int128 a, Int128 b) {
    // 128-bit division is a library call; nearly all numbers fit a machine word.
    if (narrow(a) && narrow(b)) return std::gcd(static_cast<std::int64_t>(a), static_cast<std::int64_t>(b));
    if (a < 0) a = -a;
    while (b != 0) {
        const Int128 rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

} // namespace

Exact Exact::fraction(Int128 num, Int128 den) {
    if (den == 0) throw std::domain_error("division by zero");
    if (den < 0) {
        num = mul(num, -1);
        den = mul(den, -1);
    }
    const Int128 common = gcd(num, den);
    if (common > 1 && narrow(num) && narrow(den)) {
        num = static_cast<std::int64_t>(num) / static_cast<std::int64_t>(common);
        den = static_cast<std::int64_t>(den) / static_cast<std::int64_t>(common);
    } else if (common > 1) {
        num /= common;
        den /= common;
    }
    if (den > std::numeric_limits<std::int64_t>::max()) throw OutOfRange();
    return {num, static_cast<std::int64_t>(den)};
}

Int128 Exact::rounded() const {
    const Int128 half = den_ / 2;
    return num_ >= 0 ? add(num_, half) / den_ : add(num_, -half) / den_;
}

Int128 Exact::rounded_to_even() const {
    const Int128 den = den_;
    Int128 below = num_ / den;
    if (num_ % den < 0) below -= 1;
    const Int128 rest = num_ - mul(below, den);
    if (rest > den - rest || (rest == den - rest && below % 2 != 0)) below += 1;
    return below;
}

Exact Exact::sum_of_fractions(const Exact &a, const Exact &b) {
    if (a.den_ == b.den_) return fraction(add(a.num_, b.num_), a.den_);
    return fraction(add(mul(a.num_, b.den_), mul(b.num_, a.den_)), mul(a.den_, b.den_));
}

Exact Exact::product_of_fractions(const Exact &a, const Exact &b) {
    return fraction(mul(a.num_, b.num_), mul(a.den_, b.den_));
}

std::strong_ordering Exact::order_of_fractions(const Exact &a, const Exact &b) {
    return mul(a.num_, b.den_) <=> mul(b.num_, a.den_);
}

Exact operator-(const Exact &a, const Exact &b) { return a + b * Exact(-1); }

Exact operator/(const Exact &a, const Exact &b) {
    return Exact::fraction(mul(a.num_, b.den_), mul(a.den_, b.num_));
}

} // namespace beadbook
