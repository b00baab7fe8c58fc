#pragma once

#include <string_view>

namespace beadbook {

/// The version of the program, as CMakeLists.txt has it.
std::string_view program_version();

} // namespace beadbook
