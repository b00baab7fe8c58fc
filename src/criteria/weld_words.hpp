#pragma once

#include "criteria/quantity_name.hpp"

#include <string_view>

namespace beadbook {

// What people write of a weld in their own words, as the words that conditions know.

/// The welding process: an AWS A3.0 abbreviation, an ISO 4063 number, or a usual other name; letter case
/// does not matter ("gtaw", "141", "TIG"). Empty if it is none that is known.
std::string_view process_called(std::string_view word);
/// The welding position by its AWS A3.0 or ISO 6947 name ("6g"). Empty if it is none that is known.
std::string_view position_called(std::string_view word);

/// Words of a fact that hold together, word k of the list as bit k + 1; 0: not known.
using WordBits = std::uint64_t;
/// Of "GTAW 1/8in + SMAW 3/8in": both. A part that is not known leaves all unknown.
WordBits processes_in(std::string_view text);
/// Whether two texts have a process in common, by whatever usual names ("141", "GTAW + SMAW").
bool same_process(std::string_view a, std::string_view b);
WordBits positions_in(std::string_view text);
/// The base metals that a text names: "4130 steel", "stainless steel to nickel alloy". A designation alone
/// ("S355") names none, because it is not guessed what it stands for.
WordBits materials_in(std::string_view text);
/// Whether a text leaves open what it is: "steel or copper", "not steel", "steel?".
bool leaves_open(std::string_view text);

} // namespace beadbook
