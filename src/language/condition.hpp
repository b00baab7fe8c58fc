#pragma once

#include "language/formula.hpp"

namespace beadbook {

enum class Truth : std::uint8_t { no, unknown, yes };

/// `depth over 1/32 in`, `T over 1/8 in to 3/16 in`, `joint is groove or plug`, `transition is sharp`.
/// Missing data makes it unknown, never false.
struct Condition {
    enum class Kind : std::uint8_t { comparison, fact, attribute };
    struct Edge {
        Compare compare;
        Formula right;
    };

    Kind kind = Kind::comparison;
    Formula left;
    std::vector<Edge> edges;
    Fact fact = Fact::joint;
    Attribute attribute = Attribute::side;
    std::uint32_t words = 0; ///< allowed words of the fact or attribute, by index
    std::string text;        ///< as written

    /// Truth of a comparison; adds what is missing.
    Truth compare(const Environment &env, Missing &missing) const;
    /// Truth of a word (0: not known).
    Truth word(std::uint8_t index, Missing &missing) const;
};

/// Both must hold.
constexpr Truth both(Truth a, Truth b) { return a < b ? a : b; }

} // namespace beadbook
