#pragma once

#include "measure/quantity.hpp"

#include <string>

namespace beadbook {

/// A value in people's units: 0.0563 in, 14.3 mm, 0.0044 in2, 105 deg, 350 F, 4.
/// Rounded for reading; a verdict is never taken from it.
std::string print(const Exact &value, Dimension dimension, Unit unit);

/// The same with more digits where that makes it exact: the end of a range is not to be read as a rounder
/// one.
std::string print_exact(const Exact &value, Dimension dimension, Unit unit);

/// A limit: exact where its digits end, else rounded to the side on which it holds, so that nobody reads a
/// looser one.
std::string print_limit(const Exact &value, Dimension dimension, Unit unit, bool at_most);

/// As a person wrote it down: exact, in the other unit where its digits end only there.
std::string print_unrounded(const Exact &value, Dimension dimension, Unit unit);

/// To six figures: a setting, or what was worked out from some (540 A, 0.023622 in).
std::string print_figures(const Exact &value, Dimension dimension, Unit unit);

/// Two values that are compared, printed with enough digits to be seen as different when they are; the
/// difference is that of the printed numbers.
struct PrintedPair {
    std::string first, second, difference;
};
PrintedPair print_pair(const Exact &first, const Exact &second, Dimension dimension, Unit unit);

} // namespace beadbook
