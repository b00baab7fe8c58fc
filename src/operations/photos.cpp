#include "operations/photos.hpp"

#include "measure/sha256.hpp"
#include "measure/text.hpp"
#include "records/codecs/photo.hpp"

#include <algorithm>
#include <charconv>

namespace beadbook {
namespace {

constexpr std::size_t fewest_digits = 6; ///< of a hash; what is shorter is a number

const PhotoRecord &needed_photo(const CouponState &coupon, int number) {
    for (const auto &photo : coupon.photos)
        if (photo.number == number) return photo;
    throw DataError("coupon " + coupon.record.id + " has no photo " + std::to_string(number) +
                    (coupon.photos.empty()
                         ? ", nor any other"
                         : "; it has " + counted(coupon.photos.size(), "photo") + ", numbered from 1"));
}

} // namespace

const PhotoRecord &photo_on(const CouponState &coupon, const std::string &word) {
    const std::string_view digits = std::string_view(word).substr(word.starts_with("#") ? 1 : 0);
    if (int number = 0; digits.size() < fewest_digits) {
        const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
        if (error != std::errc() || end != digits.data() + digits.size())
            throw DataError("'" + shown(word) + "' names no photo; expected its number, or the first " +
                            std::to_string(fewest_digits) + " or more digits of its hash");
        return needed_photo(coupon, number);
    }
    const std::string begins = lowered(digits);
    const PhotoRecord *found = nullptr;
    for (const auto &photo : coupon.photos) {
        if (!photo.hash.starts_with(begins)) continue;
        if (found && found->hash != photo.hash)
            throw DataError("the hashes of several photos begin with '" + shown(word) + "'; give more of it");
        if (!found || !found->withdrawn.empty()) found = &photo;
    }
    if (!found)
        throw DataError("no photo of coupon " + coupon.record.id + " begins with '" + shown(word) + "'");
    return *found;
}

PhotoKind checked_photo(std::string_view bytes) {
    const auto kind = photo_kind(bytes);
    if (!kind)
        throw refused("what is given as a photo is " + what_instead(bytes) + "; expected JPEG, PNG or WebP")
            .at("photo");
    if (bytes.size() > largest_photo)
        throw refused("the photo is larger than 8 MB; take it with fewer pixels, or cut it to what matters")
            .at("photo");
    return *kind;
}

Done<PhotoKept> attach_photo(Writing &writing, const PhotoRequest &request) {
    const CouponState &coupon = writing.coupon(request.coupon);
    PhotoRecord photo;
    photo.kind = checked_photo(request.bytes);
    if (request.find > 0) photo.find = coupon.needed_indication(request.find).number;
    photo.remark = checked_text(request.remark, "remark");
    photo.size = static_cast<std::int64_t>(request.bytes.size());
    photo.number = coupon.photos.empty() ? 1 : coupon.photos.back().number + 1;
    photo.stamp = writing.stamp();
    const std::string hash = sha256(request.bytes);
    for (const auto &one : coupon.photos)
        if (one.hash == hash && one.find == photo.find && one.withdrawn.empty())
            throw refused("coupon " + request.coupon + " has this photo already, as photo " +
                          std::to_string(one.number))
                .at("photo");
    const bool known = writing.ledger().has_photo(hash);
    photo.hash = writing.ledger().keep_photo(request.bytes);
    writing.add(codec::entry_of(request.coupon, photo));
    Done<PhotoKept> out{{request.coupon, std::move(photo)}, {}};
    if (known) out.notes.emplace_back("its bytes are on record already, and stored once");
    return out;
}

Done<int> withdraw_photo(Writing &writing, const std::string &coupon, int number, const std::string &why) {
    const CouponState &state = writing.coupon(coupon);
    const PhotoRecord &photo = needed_photo(state, number);
    if (!photo.withdrawn.empty())
        throw refused("photo " + std::to_string(number) + " is withdrawn already: " + photo.withdrawn);
    Entry e = withdrawal_of(state.photo_seq.at(number), "photo", coupon, number, why);
    e.number = number;
    writing.add(std::move(e));
    return {number, {"its bytes stay on record with it"}};
}

PhotoList photos_of(const CouponState &coupon) {
    PhotoList out{coupon.record.id, coupon.photos, {}};
    for (const auto &find : coupon.indications) out.finds.insert(find.number);
    return out;
}

PhotoList list_photos(Office &office, const std::string &coupon) { return photos_of(office.coupon(coupon)); }

PhotoAtHand photo_called(Office &office, const std::string &coupon, const std::string &word) {
    const CouponState state = office.coupon(coupon);
    PhotoAtHand out{state.record.id, photo_on(state, word), {}};
    auto bytes = office.ledger().photo(out.record.hash);
    if (!bytes)
        throw StoreError("photo " + short_hash(out.record) +
                         " is on record, and its bytes are missing; 'verify' tells more");
    out.bytes = std::move(*bytes);
    return out;
}

} // namespace beadbook
