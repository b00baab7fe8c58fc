// Photographs of coupons and finds: photo, photos.
#include "operations/photos.hpp"
#include "cli/command.hpp"
#include "records/files.hpp"
#include "render/json_photos.hpp"

namespace beadbook {
namespace {

ExitCode run_photo(Call &call) {
    // One byte more than is taken tells that it is too large.
    PhotoRequest request{call.at(0), read_bytes(call.at(1), largest_photo + 1)};
    checked_photo(request.bytes);
    if (call.has("find")) request.find = call.number("find", "number of a find");
    request.remark = call.text("remark");
    return call.tell(call.write([&](Writing &w) { return attach_photo(w, request); }));
}

ExitCode run_photos(Call &call) {
    if (call.has("out") != (call.words().size() > 1))
        throw UsageError(call.has("out") ? "which photo is to be written? give its number, or its hash"
                                         : "a photo is shown by what opens files: give --out FILE");
    if (!call.has("out")) return call.tell(list_photos(call.office(), call.at(0)));
    const PhotoAtHand photo = photo_called(call.office(), call.at(0), call.at(1));
    write_new_file(call.text("out"), photo.bytes);
    return call.tell(PhotoWritten{call.text("out"), photo.coupon, photo.record});
}

} // namespace

std::vector<Command> photo_commands() {
    return {
        enters(For::technician, run_photo, R"(photo COUPON FILE
keep a photograph with a coupon, or with one find on it
photo T-7 crater.jpg --find 3 --remark "as cleaned, ruler beside it"
JPEG, PNG or WebP, at most 8 MB. It is kept in the record by its hash (SHA-256) and cannot be changed there; the same one
is stored once. No verdict goes by it. A photo carries what the camera put into it: place, day and device, often;
nothing is taken out. 'withdraw COUPON photo NUMBER' takes one back, and its bytes stay on record.)",
               {{"find", "N", "the number of the find that it shows (default: the coupon)"},
                {"remark", "TEXT", "what is to be seen"}}),
        looks(For::technician, run_photos, R"(photos COUPON [PHOTO]
the photographs of a coupon, or one of them to a file
photos T-7 1 --out crater.jpg
PHOTO is its number, or the first six or more digits of its hash.)",
              {{"out", "FILE", "write the photo to a new file", 'o'}}),
    };
}

} // namespace beadbook
