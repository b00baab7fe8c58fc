#pragma once

#include "operations/writing.hpp"

namespace beadbook {

struct PhotoRequest {
    std::string coupon, bytes;
    int find = 0; ///< the number of the find that it shows; 0: the coupon
    std::string remark = {};
};
struct PhotoKept {
    std::string coupon;
    PhotoRecord photo;
};
/// Keeps a photograph with a coupon, or with one find on it; nothing in it is changed, and no verdict goes by
/// it. The note tells that its bytes were on record already: they are stored once. Throws Refusal (field
/// "photo"): too large, or no JPEG, PNG or WebP by its first bytes, and what it is instead.
Done<PhotoKept> attach_photo(Writing &writing, const PhotoRequest &request);

/// What attach_photo takes, and of what kind it is; for whoever reads it before anything is opened.
PhotoKind checked_photo(std::string_view bytes);

/// It stays on record with its bytes, and says that it was taken back.
Done<int> withdraw_photo(Writing &writing, const std::string &coupon, int number, const std::string &why);

/// All photos of a coupon, those that were withdrawn too.
struct PhotoList {
    std::string coupon;
    std::vector<PhotoRecord> photos;
    std::set<int> finds; ///< that stand on the coupon
};
PhotoList list_photos(Office &office, const std::string &coupon);
PhotoList photos_of(const CouponState &coupon);

/// One of them: by its number, or by the first six or more digits of its hash. Throws DataError: there is
/// none, or several begin so.
const PhotoRecord &photo_on(const CouponState &coupon, const std::string &word);
/// The same with its bytes.
struct PhotoAtHand {
    std::string coupon;
    PhotoRecord record;
    std::string bytes;
};
PhotoAtHand photo_called(Office &office, const std::string &coupon, const std::string &word);

} // namespace beadbook
