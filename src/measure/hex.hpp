#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace beadbook {

/// Two digits a byte, small letters.
std::string hex(std::string_view bytes);
/// Nothing: not such digits, two a byte.
std::optional<std::string> from_hex(std::string_view digits);

} // namespace beadbook
