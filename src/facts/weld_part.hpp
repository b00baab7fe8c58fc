#pragma once

#include "judge/coupon.hpp"
#include "measure/place.hpp"

#include <cstdint>
#include <optional>
#include <string_view>

namespace beadbook {

/// Where on a weld a find begins: a quarter round a girth weld by the clock, or along a weld with ends.
enum class WeldPart : std::uint8_t { at_12, at_3, at_6, at_9, first, second, third, fourth, unknown };
constexpr std::size_t weld_part_count = 9;
/// "12:00 to 3:00", "first quarter of the weld", "place not known".
std::string_view name_of(WeldPart part);
/// Exact; at the border the later part. Unknown without a place, or where the weld's length is not known.
WeldPart part_of(const std::optional<Span> &place, const WeldLine &line);

} // namespace beadbook
