#include "records/codecs/photo.hpp"

#include "facts/coupon_record.hpp"
#include "measure/hex.hpp"
#include "measure/text.hpp"
#include "records/codecs/typed.hpp"

namespace beadbook::codec {

nlohmann::json json_of(const PhotoRecord &photo) {
    nlohmann::json out{
        {"photo", photo.hash}, {"kind", name_of(photo.kind)}, {"number", photo.number}, {"size", photo.size}};
    if (photo.find > 0) out["find"] = photo.find;
    if (!photo.remark.empty()) out["remark"] = photo.remark;
    return out;
}

PhotoRecord photo_from(const nlohmann::json &json) {
    PhotoRecord out;
    out.hash = text_of(json, "photo", "photo");
    if (out.hash.size() != 64 || !from_hex(out.hash) || lowered(out.hash) != out.hash)
        throw DataError("'" + shown(out.hash) +
                        "' is no hash of a photo; expected 64 digits and letters "
                        "from a to f");
    const std::string kind = text_of(json, "kind", "photo");
    const auto known = photo_kind_named(kind);
    if (!known) throw DataError("'" + shown(kind) + "' is no kind of photo; expected JPEG, PNG or WebP");
    out.kind = *known;
    out.number = json.value("number", 0);
    out.size = json.value("size", std::int64_t{0});
    out.find = json.value("find", 0);
    out.remark = checked_text(text_of(json, "remark", "photo"), "remark");
    return out;
}

PhotoRecord photo_from(const Entry &entry) {
    PhotoRecord out = photo_from(parsed(entry.body));
    out.stamp = stamp_of(entry);
    return out;
}

Entry entry_of(const std::string &coupon, const PhotoRecord &photo) {
    Entry out;
    out.kind = "photo";
    out.subject = coupon;
    out.number = photo.number;
    out.body = canonical(json_of(photo));
    return out;
}

std::optional<std::string> photo_named_by(const Entry &entry) {
    if (entry.kind != "photo" || is_withdrawal(entry)) return std::nullopt;
    const nlohmann::json body = parsed(entry.body);
    const auto hash = body.find("photo");
    if (hash == body.end() || !hash->is_string()) return std::nullopt;
    return hash->get<std::string>();
}

} // namespace beadbook::codec
