#pragma once

#include "measure/quantity.hpp"

#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>

namespace beadbook {

/// Input that cannot be understood. `column` is 0-based within the text that was parsed.
struct InputError : std::runtime_error {
    InputError(const std::string &what, std::size_t at = 0) : std::runtime_error(what), column(at) {}
    std::size_t column;
};

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
