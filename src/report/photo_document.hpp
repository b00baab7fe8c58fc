#pragma once

#include "operations/photo_measuring.hpp"
#include "operations/photos.hpp"
#include "report/document.hpp"

namespace beadbook {

/// That the bytes of a photo were written to a file.
struct PhotoWritten {
    std::string to;
    std::string coupon;
    PhotoRecord photo;
};

Document document_of(const PhotoKept &done);
Document document_of(const PhotoList &list);
Document document_of(const PhotoWritten &done);
/// The proposal with its uncertainty, and what that does not cover.
Document document_of(const MeasuredOnPhoto &measured);

/// "Photo 1 of #3 (JPEG, 245 kB, 3f2a91bc04de), kept by A. Field at ...: remark". `finds`: numbers that
/// stand.
std::string photo_text(const PhotoRecord &photo, const std::set<int> &finds);
/// Each photo of a coupon in a line; nothing where there is none.
void add_photos(Document &doc, const PhotoList &list);

} // namespace beadbook
