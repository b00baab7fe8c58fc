#include "facts/photo.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <array>

namespace beadbook {
namespace {

struct KindInfo {
    PhotoKind kind;
    std::string_view name, media;
};
constexpr std::array kinds{KindInfo{PhotoKind::jpeg, "JPEG", "image/jpeg"},
                           KindInfo{PhotoKind::png, "PNG", "image/png"},
                           KindInfo{PhotoKind::webp, "WebP", "image/webp"}};

const KindInfo &info(PhotoKind kind) { return kinds.at(static_cast<std::size_t>(kind)); }

struct Beginning {
    std::string_view bytes, what;
};
/// What people take for a photograph, or send by mistake.
constexpr Beginning others[] = {
    {"GIF8", "a GIF picture"},
    {"BM", "a BMP picture"},
    {std::string_view("II*\0", 4), "a TIFF picture"},
    {std::string_view("MM\0*", 4), "a TIFF picture"},
    {"%PDF", "a PDF"},
    {"PK\x03\x04", "a ZIP archive or an office document"},
    {"RIFF", "a sound or a film"},
};

/// Containers of the kind that telephones write: the brand tells what is in them.
std::string in_container(std::string_view brand) {
    for (const char *one : {"heic", "heix", "heim", "heis", "mif1", "msf1"})
        if (brand == one) return "a HEIC picture";
    return brand == "avif" ? "an AVIF picture" : "a film";
}

bool is_plain_text(std::string_view bytes) {
    // The last character may be cut.
    for (std::size_t cut = 0; cut < 4 && cut < bytes.size(); ++cut)
        if (const auto whole = bytes.substr(0, bytes.size() - cut); valid_utf8(whole))
            return std::none_of(whole.begin(), whole.end(), [](char c) {
                return static_cast<unsigned char>(c) < ' ' && c != '\n' && c != '\r' && c != '\t';
            });
    return false;
}

} // namespace

std::string_view name_of(PhotoKind kind) { return info(kind).name; }
std::string_view media_type(PhotoKind kind) { return info(kind).media; }

std::optional<PhotoKind> photo_kind_named(std::string_view name) {
    for (const auto &one : kinds)
        if (one.name == name) return one.kind;
    return std::nullopt;
}

std::optional<PhotoKind> photo_kind(std::string_view bytes) {
    if (bytes.starts_with("\xff\xd8\xff")) return PhotoKind::jpeg;
    if (bytes.starts_with("\x89PNG\r\n\x1a\n")) return PhotoKind::png;
    if (bytes.starts_with("RIFF") && bytes.size() >= 12 && bytes.substr(8, 4) == "WEBP")
        return PhotoKind::webp;
    return std::nullopt;
}

std::string what_instead(std::string_view bytes) {
    const std::string_view head = bytes.substr(0, photo_head);
    if (head.empty()) return "empty";
    for (const auto &one : others)
        if (head.starts_with(one.bytes)) return std::string(one.what);
    if (head.size() >= 12 && head.substr(4, 4) == "ftyp") return in_container(head.substr(8, 4));
    return is_plain_text(head) ? "text" : "of a kind that is not known here";
}

std::string short_hash(const PhotoRecord &photo) { return photo.hash.substr(0, 12); }

} // namespace beadbook
