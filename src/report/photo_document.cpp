#include "report/photo_document.hpp"

#include "report/coupon_document.hpp"

namespace beadbook {
namespace {

/// "245 kB", "3.2 MB", rounded up: nothing reads as empty.
std::string size_text(std::int64_t bytes) {
    const std::int64_t kilo = (bytes + 999) / 1000, tenths = (bytes + 99'999) / 100'000;
    if (kilo < 1000) return std::to_string(kilo) + " kB";
    return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10) + " MB";
}

std::string shows_text(const PhotoRecord &photo, const std::set<int> &finds) {
    if (photo.find == 0) return "";
    return " of #" + std::to_string(photo.find) +
           (finds.contains(photo.find) ? "" : ", which is on this coupon no more,");
}

} // namespace

std::string photo_text(const PhotoRecord &photo, const std::set<int> &finds) {
    return "Photo " + std::to_string(photo.number) + shows_text(photo, finds) + " (" +
           std::string(name_of(photo.kind)) + ", " + size_text(photo.size) + ", " + short_hash(photo) +
           "), kept by " + who_words(photo.stamp) + " at " + photo.stamp.at +
           (photo.remark.empty() ? "" : ": " + photo.remark) +
           (photo.withdrawn.empty() ? "" : "; withdrawn: " + photo.withdrawn);
}

void add_photos(Document &doc, const PhotoList &list) {
    for (const auto &photo : list.photos) doc.item(photo_text(photo, list.finds));
}

Document document_of(const PhotoKept &done) {
    return Document{}.line("photo " + std::to_string(done.photo.number) + " kept with " +
                           (done.photo.find > 0 ? "#" + std::to_string(done.photo.find) + " of " : "") +
                           "coupon " + done.coupon + " (" + short_hash(done.photo) + ")");
}

Document document_of(const PhotoList &list) {
    Document doc;
    doc.title = "Photos of coupon " + list.coupon;
    if (list.photos.empty()) return doc.line("coupon " + list.coupon + " has no photo");
    add_photos(doc, list);
    return doc;
}

Document document_of(const MeasuredOnPhoto &measured) {
    Document doc;
    doc.line(Words(measured.size.size.text + " ± " + measured.size.uncertainty.text, Tone::strong) +
             ", both rounded up, by a known length of " + measured.known.text);
    doc.line(
        "The uncertainty covers how well the four marks were set, and nothing else. It does not cover a "
        "picture "
        "that was taken slanting (perspective), the lens, a known length that lies nearer to the camera or "
        "farther from it than the find (another plane), nor a fault of the known length itself.");
    return doc.line(
        "It is a proposal: where a limit lies within the uncertainty, measure on the piece. What is entered "
        "is what you type.");
}

Document document_of(const PhotoWritten &done) {
    return Document{}.line("photo " + std::to_string(done.photo.number) + " of coupon " + done.coupon +
                           " written to " + done.to);
}

} // namespace beadbook
