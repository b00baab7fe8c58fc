#include "facts/picture_size.hpp"

#include "facts/photo.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::int64_t number_at(std::string_view bytes, std::size_t at, std::size_t size) {
    std::int64_t out = 0;
    for (std::size_t i = 0; i < size; ++i) out = out * 256 + static_cast<unsigned char>(bytes[at + i]);
    return out;
}

/// Its first chunk holds width and height.
std::optional<std::int64_t> of_png(std::string_view bytes) {
    constexpr std::size_t width_at = 16;
    if (bytes.size() < width_at + 8) return std::nullopt;
    return std::max(number_at(bytes, width_at, 4), number_at(bytes, width_at + 4, 4));
}

/// Segments follow each other by their length, up to the one that begins the frame.
std::optional<std::int64_t> of_jpeg(std::string_view bytes) {
    for (std::size_t at = 2; at + 9 <= bytes.size();) {
        if (static_cast<unsigned char>(bytes[at]) != 0xFF) return std::nullopt;
        const auto kind = static_cast<unsigned char>(bytes[at + 1]);
        const bool begins_frame =
            kind >= 0xC0 && kind <= 0xCF && kind != 0xC4 && kind != 0xC8 && kind != 0xCC;
        if (begins_frame) return std::max(number_at(bytes, at + 5, 2), number_at(bytes, at + 7, 2));
        at += 2 + static_cast<std::size_t>(number_at(bytes, at + 2, 2));
    }
    return std::nullopt;
}

} // namespace

std::optional<std::int64_t> longer_side(std::string_view bytes) {
    const auto kind = photo_kind(bytes);
    if (kind == PhotoKind::png) return of_png(bytes);
    return kind == PhotoKind::jpeg ? of_jpeg(bytes) : std::nullopt;
}

} // namespace beadbook
