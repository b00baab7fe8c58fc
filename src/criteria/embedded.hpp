#pragma once

#include <map>
#include <string>

namespace beadbook {

/// The files of criteria/ and records/ that the build put into the program, by name.
const std::map<std::string, std::string> &embedded_files();

} // namespace beadbook
