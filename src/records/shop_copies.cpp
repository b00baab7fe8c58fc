#include "records/shop_copies.hpp"

#include "measure/natural_order.hpp"
#include "measure/refusal.hpp"
#include "measure/text.hpp"
#include "records/record_file.hpp"

#include <algorithm>
#include <cctype>
#include <filesystem>

namespace beadbook {
namespace {

constexpr const char *ending = ".db";
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
    std::sort(out.begin(), out.end(),
              [](const ShopCopy &a, const ShopCopy &b) { return NaturalOrder{}(a.shop, b.shop); });
    return out;
}

std::string file_of_shop(const std::string &shop) {
    if (!is_name(shop))
        throw DataError("'" + shown(shop) + "' is no name of a shop; expected 1 to " +
                        std::to_string(longest) + " letters, digits, dashes or underscores");
    return shop + ending;
}

} // namespace beadbook
