#pragma once

#include "facts/photo.hpp"
#include "records/entry.hpp"

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>

namespace beadbook::codec {

/// What an entry says of a photo: its hash, never its bytes.
nlohmann::json json_of(const PhotoRecord &photo);
/// Throws DataError: not of this shape.
PhotoRecord photo_from(const nlohmann::json &json);
PhotoRecord photo_from(const Entry &entry);

Entry entry_of(const std::string &coupon, const PhotoRecord &photo);

/// The hash of the photo that an entry names, if it is one of a photo.
std::optional<std::string> photo_named_by(const Entry &entry);

} // namespace beadbook::codec
