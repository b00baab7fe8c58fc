#pragma once

#include <string_view>
#include <vector>

namespace beadbook {

/// Whether a text names somebody who can be asked. "nobody", "the trainee", "not examined", a method, a
/// level, a number and a single letter do not. Common practice, no source.
bool names_somebody(std::string_view text);

/// Whether two texts name the same person: they differ in order, blanks, points, commas and capitals alone
/// ("Reef, J." and "j reef"). Of several names in a text one is enough.
bool same_person(std::string_view a, std::string_view b);

/// The names in a text: "J. Reef (L1)", "J. Reef / B. Shore".
std::vector<std::string_view> names_in(std::string_view text);

} // namespace beadbook
