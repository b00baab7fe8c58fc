#include "render/json_photos.hpp"

#include "records/codecs/photo.hpp"
#include "render/json_parts.hpp"

namespace beadbook {
namespace {

nlohmann::json told(const PhotoRecord &photo) {
    nlohmann::json out = codec::json_of(photo);
    out["at"] = photo.stamp.at;
    out["by"] = photo.stamp.who;
    if (photo.stamp.signed_in) out["signed in"] = true;
    if (!photo.withdrawn.empty()) out["withdrawn"] = photo.withdrawn;
    return out;
}

nlohmann::json told(const std::string &coupon, const PhotoRecord &photo) {
    nlohmann::json out = told(photo);
    out["coupon"] = coupon;
    return out;
}

} // namespace

std::string json_text(const PhotoKept &done, const std::vector<std::string> &notes) {
    return render::finished(told(done.coupon, done.photo), notes);
}

std::string json_text(const PhotoList &list, const std::vector<std::string> &notes) {
    nlohmann::json out{{"coupon", list.coupon}, {"photos", nlohmann::json::array()}};
    render::add_photos(out, list.photos);
    return render::finished(std::move(out), notes);
}

std::string json_text(const PhotoWritten &done, const std::vector<std::string> &notes) {
    nlohmann::json out = told(done.coupon, done.photo);
    out["written to"] = done.to;
    return render::finished(std::move(out), notes);
}

void render::add_photos(nlohmann::json &json, const std::vector<PhotoRecord> &photos) {
    for (const auto &photo : photos) json["photos"].push_back(told(photo));
}

} // namespace beadbook
