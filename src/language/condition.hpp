#pragma once

#include "language/formula.hpp"
#include "measure/day.hpp"

#include <algorithm>

namespace beadbook {

enum class Truth : std::uint8_t { no, unknown, yes };

/// Both must hold.
constexpr Truth both(Truth a, Truth b) { return a < b ? a : b; }

/// `depth over 1/32 in`, `T over 1/8 in to 3/16 in`, `joint is groove or plug`, `form is not tube`,
/// `certificate not past`, `vision within 1 year`. Missing data makes it unknown, never false: also a
/// denied word.
struct Condition {
    enum class Kind : std::uint8_t {
        comparison, ///< of a formula with one or more edges
        word,       ///< is one of some words, or none of them
        not_past,   ///< a day on or after the day in question
        within,     ///< a day at most a period before it
    };
    struct Edge {
        Compare compare;
        Formula right;
    };

    Kind kind = Kind::comparison;
    Slot slot = 0; ///< of the word or day
    Formula left;
    std::vector<Edge> edges;
    std::vector<std::string> words; ///< as written
    bool denied = false;            ///< is not
    std::uint64_t fitting = 0;      ///< words that satisfy it, by index: word k of a closed list is bit k + 1
    Period period;
    std::string subject; ///< the name that it asks about; empty where arithmetic stands on the left
    std::string text;    ///< as written

    /// Whether either side of a comparison speaks of it.
    bool uses(Slot quantity) const {
        return left.uses(quantity) || std::any_of(edges.begin(), edges.end(), [&](const Edge &edge) {
                   return edge.right.uses(quantity);
               });
    }
    /// Truth of a comparison; adds what is missing.
    template <class Values>
    Truth compare(const Values &values, Missing &missing) const {
        const Evaluated value = left.evaluate(values);
        Truth truth = value.known() ? Truth::yes : Truth::unknown;
        Missing lacks = value.missing;
        for (const auto &edge : edges) {
            const Evaluated limit = edge.right.limit(values, edge.compare);
            lacks |= limit.missing;
            if (!value.known() || !limit.known())
                truth = both(truth, Truth::unknown);
            else if (!holds(value.value, edge.compare, limit.value))
                return Truth::no;
        }
        if (truth == Truth::unknown) missing |= lacks;
        return truth;
    }
    /// Truth of a word by its index in the closed list (0: not known); adds what is missing.
    Truth word(std::uint8_t index, Missing &missing) const {
        return words_said(index == 0 ? 0 : std::uint64_t{1} << index, missing);
    }
    /// The same of several that hold together, by bits: only some of which satisfy it leaves it open.
    Truth words_said(std::uint64_t said, Missing &missing) const {
        if (said != 0 && (said & ~fitting) == 0) return Truth::yes;
        if (said != 0 && (said & fitting) == 0) return Truth::no;
        missing |= Missing::word(slot);
        return Truth::unknown;
    }
    /// Whether a known word satisfies it.
    bool fits(std::string_view word) const;
    /// Truth of a day, on the day in question.
    Truth day(Day recorded, Day asked_on) const;
};

} // namespace beadbook
