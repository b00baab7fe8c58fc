#pragma once

#include <string>
#include <vector>

namespace beadbook {

/// The reading copy of one shop's record: SHOP.db in a folder that joins several. Each is a whole record with
/// its own chain, and refuses to be written to.
struct ShopCopy {
    std::string shop, path;
};

/// Those of a folder, by their names; none where the path is no such folder. Throws StoreError: one that was
/// joined is missing, or is no such copy any more.
std::vector<ShopCopy> shop_copies(const std::string &folder);
class NewFolder;
/// Keeps in a new folder which shops it joins, so that one that is missing later is missed.
void note_shops(const NewFolder &folder, const std::vector<std::string> &shops);

/// The name of a shop's copy in its folder. Throws DataError: not 1 to 20 letters, digits, dashes or
/// underscores. It has no dot, so that SHOP.MARK is read in one way.
std::string file_of_shop(const std::string &shop);

} // namespace beadbook
