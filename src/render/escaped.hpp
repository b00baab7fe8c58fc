#pragma once

#include <string>
#include <string_view>

namespace beadbook {

/// Text made safe for a page or a picture, also between quotes.
std::string escaped(std::string_view text);

} // namespace beadbook
