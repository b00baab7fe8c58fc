#pragma once

#include <string>
#include <vector>

namespace beadbook {

/// Files of criteria/ built into the program, so that a verdict never hangs on where it was installed.
/// Throws std::out_of_range for a name that is not shipped.
const std::string &shipped_file(const std::string &name);

/// Names of the shipped files of one folder of criteria/ ("welder/"; "" is the folder itself), without
/// .yaml, in alphabetical order.
std::vector<std::string> shipped_in(const std::string &folder);

/// Names of the shipped criteria sets, without .yaml, in alphabetical order.
std::vector<std::string> shipped_sets();

} // namespace beadbook
