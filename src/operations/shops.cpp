#include "operations/shops.hpp"

#include <algorithm>

namespace beadbook {

std::string told_of_shop(const std::string &shop, const std::string &mark) {
    return shop.empty() || mark.empty() ? mark : shop + "." + mark;
}

namespace {

constexpr std::string_view elsewhere = "elsewhere";

} // namespace

std::string told_of_elsewhere(const std::string &mark) { return told_of_shop(std::string(elsewhere), mark); }

std::string mark_elsewhere(const std::string &told) {
    const std::string begin = std::string(elsewhere) + ".";
    return told.starts_with(begin) ? told.substr(begin.size()) : told;
}

std::optional<Selection> Shops::asked_of(const Shop &shop, const Selection &of) const {
    const auto is_of = [&](const Shop &one) {
        return !one.name.empty() && of.welder.starts_with(one.name + ".");
    };
    Selection out = of;
    if (is_of(shop))
        out.welder.erase(0, shop.name.size() + 1);
    else if (std::any_of(all_.begin(), all_.end(), is_of))
        return std::nullopt;
    return out;
}

} // namespace beadbook
