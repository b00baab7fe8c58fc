#include "records/shop_copies.hpp"

#include "measure/natural_order.hpp"
#include "measure/refusal.hpp"
#include "measure/text.hpp"
#include "records/files.hpp"
#include "records/new_folder.hpp"
#include "records/record_file.hpp"

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>

namespace beadbook {
namespace {

constexpr const char *ending = ".db", *list_of_shops = "shops.txt";
constexpr std::size_t longest = 20;

bool is_name(const std::string &shop) {
    return !shop.empty() && shop.size() <= longest &&
           std::all_of(shop.begin(), shop.end(),
                       [](unsigned char c) { return std::isalnum(c) != 0 || c == '-' || c == '_'; });
}

} // namespace

std::vector<ShopCopy> shop_copies(const std::string &folder) {
    std::vector<ShopCopy> out;
    std::error_code none;
    for (const auto &file : std::filesystem::directory_iterator(folder, none))
        if (file.path().extension() == ending && is_name(file.path().stem().string()) &&
            file.is_regular_file(none) && record_file::is_reading_copy(file.path().string()))
            out.push_back({file.path().stem().string(), file.path().string()});
    // Older programs noted no list: there nobody can say what is missing.
    if (std::ifstream list(folder + "/" + list_of_shops); list)
        for (std::string shop; std::getline(list, shop);)
            if (std::none_of(out.begin(), out.end(), [&](const ShopCopy &one) { return one.shop == shop; }))
                throw StoreError(
                    visible(folder) + " joins several shops, and " + visible(shop) + ending +
                    ", the copy of one, is missing or no longer as it was made; nothing is told of the "
                    "others alone. Join them again");
    std::sort(out.begin(), out.end(),
              [](const ShopCopy &a, const ShopCopy &b) { return NaturalOrder{}(a.shop, b.shop); });
    return out;
}

void note_shops(const NewFolder &folder, const std::vector<std::string> &shops) {
    write_new_file(folder.file(list_of_shops), joined(shops, "\n") + "\n");
}

std::string file_of_shop(const std::string &shop) {
    if (!is_name(shop))
        throw DataError("'" + shown(shop) + "' is no name of a shop; expected 1 to " +
                        std::to_string(longest) + " letters, digits, dashes or underscores");
    return shop + ending;
}

} // namespace beadbook
