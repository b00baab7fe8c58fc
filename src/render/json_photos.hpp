#pragma once

#include "report/photo_document.hpp"

#include <nlohmann/json_fwd.hpp>

namespace beadbook {

std::string json_text(const PhotoKept &done, const std::vector<std::string> &notes = {});
std::string json_text(const PhotoList &list, const std::vector<std::string> &notes = {});
std::string json_text(const PhotoWritten &done, const std::vector<std::string> &notes = {});

namespace render {

/// Photos of a coupon under "photos", if it has any.
void add_photos(nlohmann::json &json, const std::vector<PhotoRecord> &photos);

} // namespace render
} // namespace beadbook
