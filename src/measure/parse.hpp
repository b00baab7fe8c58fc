#pragma once

#include "measure/quantity.hpp"
#include "measure/refusal.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace beadbook {

/// A number as the trade writes it: 0.045, .045, 3/16, 1-1/2, 2 3/4. Advances `at` past it.
/// Returns nothing, and leaves `at`, if no number starts there. Throws InputError on 1/0 or too many digits.
std::optional<Exact> scan_number(std::string_view text, std::size_t &at);

/// A unit word at `at`: in, ", mm, cm, m, ft, thou, mil, um, in2, mm2, deg, F, C, %. Advances past it.
struct UnitWord {
    Dimension dimension;
    Exact scale;      ///< base units in one of it
    Exact offset = 0; ///< added after scaling (Celsius only)
    std::optional<Unit> family;
};
std::optional<UnitWord> scan_unit(std::string_view text, std::size_t &at);

/// Whole text to a value of the wanted dimension, e.g. `3/16`, `1-1/2 in`, `2 3/4"`, `1.2 mm`, `45 thou`.
/// A bare number takes `unit` (and the text in the result says so); without one it is an error.
/// Errors: not a number, wrong unit, negative, over ten kilometres, finer than one nanometre.
Typed parse_typed(std::string_view text, Dimension wanted, std::optional<Unit> unit);

Length parse_length(std::string_view text, std::optional<Unit> unit);

} // namespace beadbook
