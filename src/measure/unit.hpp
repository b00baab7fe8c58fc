#pragma once

#include "measure/quantity.hpp"

#include <initializer_list>
#include <optional>
#include <string_view>

namespace beadbook {

/// One spelling of a unit. The table of all of them is the only one: wherever a measurement is typed, a word
/// means the same.
struct UnitWord {
    std::string_view word;
    Dimension dimension = Dimension::number;
    Exact scale = 1;  ///< base units in one of it
    Exact offset = 0; ///< added after scaling (Celsius only)
    /// US customary (inch) or metric (millimetre), where standards print a value in both.
    std::optional<Unit> family;
};

/// The unit that stands at `at`, blanks before it left out; advances past it. The longest spelling is taken,
/// and only a whole word. With `only`, other kinds of units are not seen: in a log line `3.2 h 0.1` the h is
/// a height and no hour.
std::optional<UnitWord> scan_unit(std::string_view text, std::size_t &at,
                                  std::initializer_list<Dimension> only = {});

/// The unit of that spelling, which must stand in the table.
const UnitWord &unit_called(std::string_view word);

} // namespace beadbook
