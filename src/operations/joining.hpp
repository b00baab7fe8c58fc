#pragma once

#include "operations/catalogue.hpp"

namespace beadbook {

/// A shop and its record.
struct ShopRecord {
    std::string shop, path;
};
struct JoinedShop {
    std::string shop, path;
    std::size_t coupons = 0;
    Verification copy;
};
/// The records of several shops, to be read as one.
struct JoinedShops {
    std::string folder;
    std::vector<JoinedShop> shops;
};

/// Makes a new folder with a reading copy of each record: whole, verified, its own chain, and nothing can be
/// entered in it. The records stay as they are. Throws DataError: two of one name, two of one record, a
/// folder that is there; StoreError: a record that does not verify. Then no folder is made.
JoinedShops join_shops(Catalogue &catalogue, const std::string &folder, const std::vector<ShopRecord> &shops);

} // namespace beadbook
