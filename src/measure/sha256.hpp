#pragma once

#include <string>
#include <string_view>

namespace beadbook {

/// SHA-256 in lower-case hex.
std::string sha256(std::string_view bytes);

} // namespace beadbook
