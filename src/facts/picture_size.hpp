#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

namespace beadbook {

/// The longer side of a picture in pixels, as its own head says (JPEG, PNG; whichever way it is turned).
/// Nothing where that is not told.
std::optional<std::int64_t> longer_side(std::string_view bytes);

} // namespace beadbook
