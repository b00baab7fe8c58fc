#pragma once

#include <cstddef>
#include <cstdint>

namespace beadbook {

/// Where a floor keeps a quantity, a word or a day of its table of names: an index into its own lists.
using Slot = std::uint8_t;

/// What kept something from being decided, as a set of bits. The floor whose slots they are gives the words.
class Missing {
public:
    static constexpr std::size_t most_quantities = 40, most_words = 16;

    constexpr Missing() = default;
    static constexpr Missing quantity(Slot slot) { return Missing(bit(slot)); }
    /// A floor with more words than are told apart (facts/plausibility) asks only whether anything is
    /// missing.
    static constexpr Missing word(Slot slot) { return Missing(bit(most_quantities + slot % most_words)); }
    static constexpr Missing table_value() { return Missing(bit(56)); }
    static constexpr Missing exact_number() { return Missing(bit(57)); }
    /// A number of the standard that the set leaves blank, and nobody filled in.
    static constexpr Missing blank() { return Missing(bit(61)); }
    // What the judge may lack beside the names.
    static constexpr Missing place() { return Missing(bit(58)); }
    static constexpr Missing across() { return Missing(bit(59)); }
    static constexpr Missing shape() { return Missing(bit(60)); }

    constexpr bool any() const { return bits_ != 0; }
    constexpr bool has(Missing other) const { return (bits_ & other.bits_) == other.bits_; }
    friend constexpr Missing operator|(Missing a, Missing b) { return Missing(a.bits_ | b.bits_); }
    constexpr Missing without(Missing other) const { return Missing(bits_ & ~other.bits_); }
    constexpr Missing &operator|=(Missing other) { return *this = *this | other; }
    friend constexpr bool operator==(Missing, Missing) = default;

private:
    constexpr explicit Missing(std::uint64_t bits) : bits_(bits) {}
    static constexpr std::uint64_t bit(std::size_t n) { return std::uint64_t{1} << n; }
    std::uint64_t bits_ = 0;
};

} // namespace beadbook
