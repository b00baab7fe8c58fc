// Photographs at the bench: one is kept, looked at, taken back.
#include "operations/photos.hpp"
#include "web/coupon_parts.hpp"
#include "web/page.hpp"
#include "web/photo_part.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// The number at the beginning of "#3 crack"; 0: the coupon as a whole.
int find_in(const std::string &words) {
    if (!words.starts_with("#")) return 0;
    return whole_number_in(words.substr(1, words.find(' ') - 1));
}

Answer keep(Visit &visit) {
    const std::string &mark = visit.word("mark");
    const auto &files = visit.request.files;
    const auto file =
        std::find_if(files.begin(), files.end(), [](const SentFile &one) { return one.field == "photo"; });
    if (file == files.end()) throw refused("no photo came along; take one, or choose its file").at("photo");
    const PhotoRequest request{mark, file->bytes, find_in(visit.field("find")), visit.field("photo-remark")};
    return visit.enter(coupon_path(mark), [&](Writing &w) {
        auto done = attach_photo(w, request);
        done.notes.insert(done.notes.begin(),
                          "photo " + std::to_string(done.value.photo.number) + " is kept");
        return std::move(done.notes);
    });
}

Answer withdraw(Visit &visit) {
    const std::string &mark = visit.word("mark");
    const int number = whole_number_in(visit.field("number"));
    return visit.enter(coupon_path(mark), [&](Writing &w) {
        auto done = withdraw_photo(w, mark, number, visit.field("why"));
        done.notes.insert(done.notes.begin(), "photo " + std::to_string(number) + " is taken back");
        return std::move(done.notes);
    });
}

} // namespace

PageFamily photo_pages() {
    const std::string photo = "/coupon/:mark/photo";
    return {"",
            "",
            {{"POST", photo, keep},
             {"GET", photo + "/:photo", photo_answer},
             {"POST", photo + "/:photo/withdraw", withdraw}}};
}

} // namespace beadbook
