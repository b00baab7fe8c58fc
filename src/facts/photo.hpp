#pragma once

#include "facts/stamp.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace beadbook {

/// What a photograph is stored as; told by its first bytes, never by its name.
enum class PhotoKind : std::uint8_t { jpeg, png, webp };

std::string_view name_of(PhotoKind kind);    ///< JPEG, PNG, WebP
std::string_view media_type(PhotoKind kind); ///< image/jpeg
std::optional<PhotoKind> photo_kind_named(std::string_view name);

inline constexpr std::size_t largest_photo = 8'000'000; ///< bytes
inline constexpr std::size_t photo_head = 64;           ///< so many first bytes tell what a file is

/// Nothing: it is none of them.
std::optional<PhotoKind> photo_kind(std::string_view bytes);
/// What the bytes are instead, as far as they tell: "a PDF", "a HEIC picture", "text", "empty".
std::string what_instead(std::string_view bytes);

/// A photograph of a coupon, or of one find on it. No verdict goes by it.
struct PhotoRecord {
    int number = 0;   ///< on its coupon, from 1
    std::string hash; ///< SHA-256 of its bytes, which lie beside the entries
    PhotoKind kind = PhotoKind::jpeg;
    std::int64_t size = 0; ///< bytes
    int find = 0;          ///< the number of the find that it shows; 0: the coupon
    std::string remark;
    std::string withdrawn = {}; ///< why it was taken back; empty: it stands
    Stamp stamp = {};
};

/// The first digits of its hash, by which people call it.
std::string short_hash(const PhotoRecord &photo);

} // namespace beadbook
