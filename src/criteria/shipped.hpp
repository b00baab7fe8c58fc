#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace beadbook {

/// A file of criteria/, records/ or src that is built into the program, so that a verdict never hangs on
/// where it was installed. Throws std::out_of_range for a name that is not shipped.
std::string shipped_file(std::string_view name);

/// Names of the shipped files of one folder of criteria/ ("welder/"; "" is the folder itself), without
/// .yaml, in alphabetical order.
std::vector<std::string> shipped_in(const std::string &folder);

/// Names of the shipped criteria sets, without .yaml, in alphabetical order.
const std::vector<std::string> &shipped_sets();

} // namespace beadbook
