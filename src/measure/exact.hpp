#pragma once

#include <compare>
#include <cstdint>
#include <stdexcept>

namespace beadbook {

__extension__ using Int128 = __int128;

/// Arithmetic left the range in which it is exact. Never rounded, never wrapped: the caller says "cannot".
struct OutOfRange : std::range_error {
    OutOfRange() : std::range_error("a number is too large to be computed exactly") {}
};

/// An exact fraction. Lengths are whole nanometres; limits such as T/3 are fractions of one.
///
/// Why not boost::rational: it reduces by a gcd after every step, and its 128-bit form needs GNU mode for
/// numeric_limits. Here a denominator comes from the criteria text and stays small, so the common case
/// (both denominators 1) is one multiplication, and overflow is caught instead of reduced away.
class Exact {
public:
    constexpr Exact() = default;
    constexpr Exact(std::int64_t whole) : num_(whole) {}
    /// Reduces; throws std::domain_error if `den` is 0, OutOfRange if it does not fit.
    static Exact fraction(Int128 num, Int128 den);
    static Exact whole(Int128 value) { return Exact(value, 1); }

    Int128 num() const { return num_; }
    std::int64_t den() const { return den_; }
    bool is_whole() const { return den_ == 1; }
    double to_double() const {
        // A conversion from 128 bits is a library call; nearly all numbers fit a machine word.
        const auto word = static_cast<std::int64_t>(num_);
        const double above = word == num_ ? static_cast<double>(word) : static_cast<double>(num_);
        return den_ == 1 ? above : above / static_cast<double>(den_);
    }
    /// Nearest whole number, halves away from zero.
    Int128 rounded() const;
    /// Nearest whole number, halves to the even one: the rounding method of ASTM E29.
    Int128 rounded_to_even() const;

    // Whole numbers, nearly all there are, are computed in place.
    friend Exact operator+(const Exact &a, const Exact &b) {
        Int128 sum;
        if (a.den_ != 1 || b.den_ != 1 || __builtin_add_overflow(a.num_, b.num_, &sum))
            return sum_of_fractions(a, b);
        return {sum, 1};
    }
    friend Exact operator-(const Exact &a, const Exact &b);
    friend Exact operator*(const Exact &a, const Exact &b) {
        Int128 product;
        if (a.den_ != 1 || b.den_ != 1 || __builtin_mul_overflow(a.num_, b.num_, &product))
            return product_of_fractions(a, b);
        return {product, 1};
    }
    /// Throws std::domain_error on division by zero.
    friend Exact operator/(const Exact &a, const Exact &b);
    friend std::strong_ordering operator<=>(const Exact &a, const Exact &b) {
        return a.den_ == b.den_ ? a.num_ <=> b.num_ : order_of_fractions(a, b);
    }
    friend bool operator==(const Exact &a, const Exact &b) {
        return a.den_ == b.den_ ? a.num_ == b.num_ : order_of_fractions(a, b) == 0;
    }
    friend bool operator<(const Exact &a, const Exact &b) {
        return a.den_ == b.den_ ? a.num_ < b.num_ : order_of_fractions(a, b) < 0;
    }
    friend bool operator>(const Exact &a, const Exact &b) { return b < a; }
    friend bool operator<=(const Exact &a, const Exact &b) { return !(b < a); }
    friend bool operator>=(const Exact &a, const Exact &b) { return !(a < b); }

private:
    constexpr Exact(Int128 num, std::int64_t den) : num_(num), den_(den) {}
    static Exact sum_of_fractions(const Exact &a, const Exact &b);
    static Exact product_of_fractions(const Exact &a, const Exact &b);
    static std::strong_ordering order_of_fractions(const Exact &a, const Exact &b);

    Int128 num_ = 0;
    std::int64_t den_ = 1;
};

} // namespace beadbook
