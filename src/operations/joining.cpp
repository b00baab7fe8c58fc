#include "operations/joining.hpp"

#include "measure/text.hpp"
#include "operations/coupon_lines.hpp"
#include "records/new_folder.hpp"
#include "records/shop_copies.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// What it says of its coupons is worked out again where another program kept it: later nobody can.
JoinedShop copied(Catalogue &catalogue, const ShopRecord &shop, const std::string &to) {
    JoinedShop out{shop.shop, shop.path, 0, Ledger(shop.path, Ledger::Mode::read).backup(to)};
    Book copy(to, Ledger::Mode::write);
    Office office(copy, catalogue);
    if (KeptLines(office).miss_any()) refresh_lines(office);
    out.coupons = copy.coupons().size();
    copy.ledger().make_reading_copy();
    return out;
}

/// One record, or an older copy of it: its coupons would be counted twice.
void refuse_same(const JoinedShop &one, const std::string &one_copy, const JoinedShop &other) {
    if (one.copy.entries > 0 && Ledger(one_copy, Ledger::Mode::read).entry_with_hash(other.copy.head))
        throw DataError(visible(one.path) + " and " + visible(other.path) +
                        " are the same record, or one is a copy of the other; join it once");
}

} // namespace

JoinedShops join_shops(Catalogue &catalogue, const std::string &folder,
                       const std::vector<ShopRecord> &shops) {
    JoinedShops out{folder, {}};
    NewFolder made(folder);
    for (const auto &shop : shops) {
        const std::string name = file_of_shop(shop.shop);
        for (const auto &before : out.shops)
            if (same_word(before.shop, shop.shop))
                throw DataError("two shops are called '" + shown(shop.shop) +
                                "'; each needs a name of its own");
        out.shops.push_back(copied(catalogue, shop, made.file(name)));
        const JoinedShop &now = out.shops.back();
        for (std::size_t k = 0; k + 1 < out.shops.size(); ++k) {
            refuse_same(now, made.file(name), out.shops[k]);
            refuse_same(out.shops[k], made.file(file_of_shop(out.shops[k].shop)), now);
        }
    }
    std::vector<std::string> names;
    for (const auto &shop : out.shops) names.push_back(shop.shop);
    note_shops(made, names);
    made.finish();
    return out;
}

} // namespace beadbook
