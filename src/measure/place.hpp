#pragma once

#include "measure/parse.hpp"

namespace beadbook {

/// The line that places are given on. A girth weld is closed: its far end is its datum again.
struct WeldLine {
    std::optional<Length> length; ///< along the weld; the circumference if closed
    bool closed = false;
};

/// Circumference of a tube, rounded to the nanometre (pi is not a fraction).
Length circumference(Length outside_diameter);

/// Where the word o'clock (also oclock) ends that stands at `at`, blanks in front of it; `at` if none does.
std::size_t behind_clock_word(std::string_view text, std::size_t at);

/// Distance from the datum: `3.2 in`, `2-1/8`, and on a closed weld also `3:30` (clock, datum at 12:00),
/// `4 o'clock`, `105 deg`. Clock and angle are rounded to the nanometre of arc.
/// A bare whole number up to 12 on a closed weld is a distance or an hour: refused with both readings.
/// Errors: off the weld, clock on a straight weld or on one whose circumference is not known.
Typed parse_place(std::string_view text, const WeldLine &weld, std::optional<Unit> unit);

} // namespace beadbook
