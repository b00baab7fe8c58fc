#include "facts/weld_part.hpp"

#include <algorithm>
#include <array>

namespace beadbook {

std::string_view name_of(WeldPart part) {
    static constexpr std::array<std::string_view, weld_part_count> names{"12:00 to 3:00",
                                                                         "3:00 to 6:00",
                                                                         "6:00 to 9:00",
                                                                         "9:00 to 12:00",
                                                                         "first quarter of the weld",
                                                                         "second quarter of the weld",
                                                                         "third quarter of the weld",
                                                                         "last quarter of the weld",
                                                                         "place not known"};
    return names[static_cast<std::size_t>(part)];
}

WeldPart part_of(const std::optional<Span> &place, const WeldLine &line) {
    if (!place || !line.length || line.length->nm <= 0) return WeldPart::unknown;
    const std::int64_t length = line.length->nm;
    // The far end of a weld belongs to its last part; on a closed one it is the datum again.
    const std::int64_t at = line.closed ? (place->from.nm % length + length) % length
                                        : std::clamp(place->from.nm, std::int64_t{0}, length - 1);
    // A clock reading is rounded down to whole nanometres: less than one before a quarter is its begin.
    const auto quarter = static_cast<int>((Int128(at) * 4 + 3) / length);
    return static_cast<WeldPart>(quarter + static_cast<int>(line.closed ? WeldPart::at_12 : WeldPart::first));
}

} // namespace beadbook
