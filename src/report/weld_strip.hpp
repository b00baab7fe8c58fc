#pragma once

#include "report/sentence.hpp"

namespace beadbook {

/// The weld unrolled from its datum as a line of characters, each find at its place under its number: X where
/// it keeps the class from being accepted for certain, = where it does not. A girth weld shows the hours.
/// Empty if nothing is placed.
std::string weld_strip(const Case &c, const ClassJudgement &judged);

} // namespace beadbook
