#pragma once

#include "facts/indication_record.hpp"

#include <string>
#include <string_view>

namespace beadbook {

// A find that goes all round a girth weld.

/// The words by which a text begins that say so: all round, full circumference. Empty if it does not.
std::string_view whole_turn_said(std::string_view text);
/// What to write for those words.
std::string how_a_turn_is_written(std::string_view said, const WeldLine &weld, std::optional<Unit> unit);
/// What is asked about a find that may go all round and is written as a point: `from 12:00 to 12:00`, or a
/// remark that says so. Empty if nothing is.
std::string point_or_turn(const IndicationRecord &find, const WeldLine &weld, std::optional<Unit> unit);

} // namespace beadbook
