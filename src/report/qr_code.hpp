#pragma once

#include <string>
#include <vector>

namespace beadbook {

/// A text as a QR code (ISO/IEC 18004) that still reads where 15 % of it are dirty: rows of modules, true is
/// dark, without the quiet zone. Throws DataError: too long for one.
std::vector<std::vector<bool>> qr_code(const std::string &text);

/// Modules that stay light on every side of it.
constexpr std::size_t qr_quiet_zone = 4;

} // namespace beadbook
