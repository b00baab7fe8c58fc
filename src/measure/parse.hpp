#pragma once

#include "measure/refusal.hpp"
#include "measure/unit.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace beadbook {

/// A number as the trade writes it: 0.045, .045, 3/16, 1-1/2, 2 3/4. Advances `at` past it.
/// Returns nothing, and leaves `at`, if no number starts there. Throws InputError on 1/0 or too many digits.
std::optional<Exact> scan_number(std::string_view text, std::size_t &at);

/// Whole text to a value of the wanted dimension, e.g. `3/16`, `1-1/2 in`, `2 3/4"`, `1.2 mm`, `45 thou`,
/// `20 °C`, `100 fc`. A bare length or area takes `unit` (and the text in the result says so), a bare angle
/// is in degrees; other kinds need their unit, and a number has none or is `40 %`. Errors: not a number,
/// wrong unit, negative, far too large, finer than one nanometre (or the base unit of what the record keeps).
Typed parse_typed(std::string_view text, Dimension wanted, std::optional<Unit> unit);

/// The same for what a person writes about a coupon whose unit may not be fixed: a bare length or area is
/// then refused with both readings (0.1 in or 0.1 mm?).
Typed parse_measured(std::string_view text, Dimension wanted, std::optional<Unit> unit);

/// A number alone, without a unit: `0.1`, `3/16`.
bool is_bare_number(std::string_view text);
/// The family of the unit that a length is written with; nothing if it has none.
std::optional<Unit> unit_written(std::string_view text);

/// The same where no whole number of base units is asked for: a setting, an input of a calculation (1/3 in).
Exact parse_amount(std::string_view text, Dimension wanted, std::optional<Unit> unit = {});

Length parse_length(std::string_view text, std::optional<Unit> unit);

} // namespace beadbook
