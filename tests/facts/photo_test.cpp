#include "facts/photo.hpp"

#include "catch.hpp"

using namespace beadbook;

TEST_CASE("a photo is told by its first bytes, and by nothing else") {
    CHECK(photo_kind("\xff\xd8\xff\xe0 and more") == PhotoKind::jpeg);
    CHECK(photo_kind("\x89PNG\r\n\x1a\n and more") == PhotoKind::png);
    CHECK(photo_kind("RIFF1234WEBPVP8 ") == PhotoKind::webp);
    for (const char *none :
         {"", "\xff\xd8", "\x89PNG\n", "RIFF1234WAVE", "RIFF1234WEB", "GIF89a", " \xff\xd8\xff"})
        CHECK_FALSE(photo_kind(none));
    for (const auto kind : {PhotoKind::jpeg, PhotoKind::png, PhotoKind::webp})
        CHECK(photo_kind_named(name_of(kind)) == kind);
    CHECK_FALSE(photo_kind_named("jpeg"));
    CHECK(media_type(PhotoKind::webp) == "image/webp");
}

TEST_CASE("what is no photo is named") {
    const std::pair<std::string, const char *> rows[] = {
        {"", "empty"},
        {"GIF89a", "a GIF picture"},
        {"BM6000", "a BMP picture"},
        {std::string("II*\0rest", 8), "a TIFF picture"},
        {"%PDF-1.7", "a PDF"},
        {"PK\x03\x04rest", "a ZIP archive or an office document"},
        {std::string("\0\0\0\x18"
                     "ftypheic\0\0",
                     14),
         "a HEIC picture"},
        {std::string("\0\0\0\x18"
                     "ftypavif\0\0",
                     14),
         "an AVIF picture"},
        {std::string("\0\0\0\x18"
                     "ftypisom\0\0",
                     14),
         "a film"},
        {"RIFF1234WAVE", "a sound or a film"},
        {"<svg xmlns=\"http://www.w3.org/2000/svg\"><script>alert(1)</script></svg>", "text"},
        {std::string(63, 'x') + "\xc3\xa4", "text"}, // a character cut by the end of the head
        {std::string("\0\1\2\3", 4), "of a kind that is not known here"},
    };
    for (const auto &[bytes, what] : rows) CHECK(what_instead(bytes) == what);
}
