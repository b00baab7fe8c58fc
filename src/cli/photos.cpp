// Photographs of coupons and finds: photo, photos.
#include "operations/photos.hpp"
#include "cli/deeds.hpp"
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

Deeds photo_deeds() { return {{"photo", run_photo}, {"photos", run_photos}}; }

} // namespace beadbook
