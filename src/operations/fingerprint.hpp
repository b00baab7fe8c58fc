#pragma once

#include <string_view>

namespace beadbook {

/// Changes with every line of this program and every file that is built into it (made by .cmake/
/// fingerprint.cmake): what one program worked out, another works out again.
std::string_view program_fingerprint();

} // namespace beadbook
