#include "facts/group_metal.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <vector>

namespace beadbook {
namespace {

/// A metal as a material names it, stainless before steel, as it is called that too.
constexpr auto group_metals = std::to_array<std::string_view>(
    {"stainless", "steel", "alumin", "copper", "nickel", "cobalt", "titanium", "magnesium"});

struct Numbers {
    std::string_view metal; ///< one of the metals above
    int first, last;
};
/// P-numbers. P10 and P11 hold steels of both kinds.
constexpr auto of_metals = std::to_array<Numbers>({{"stainless", 6, 8},
                                                   {"stainless", 10, 10},
                                                   {"steel", 1, 5},
                                                   {"steel", 9, 15},
                                                   {"alumin", 21, 26},
                                                   {"copper", 31, 35},
                                                   {"titanium", 51, 53}});
struct Group {
    std::string_view name, metals;
};
/// Those that AWS D17.1 tells by a letter, or from IV on. Heat resisting alloys of group III are of nickel,
/// cobalt or iron.
constexpr auto of_d17_1 = std::to_array<Group>({{"Ia", "steel"},
                                                {"Ib", "steel"},
                                                {"IIa", "stainless"},
                                                {"IIb", "stainless"},
                                                {"IIIa", "nickel cobalt stainless steel"},
                                                {"IIIb", "nickel cobalt stainless steel"},
                                                {"IV", "alumin"},
                                                {"V", "magnesium"},
                                                {"VI", "titanium"}});

/// "P8", "P-5A", "p no. 8" as its number; 0: no P-number.
int p_number(const std::string &group) {
    std::string plain;
    for (const char c : lowered(group))
        if (std::isalnum(static_cast<unsigned char>(c)) != 0) plain += c;
    if (plain.starts_with("pno")) plain.erase(1, 2);
    if (plain.size() < 2 || plain.front() != 'p') return 0;
    std::size_t end = 1;
    while (end < plain.size() && is_digit(plain[end])) ++end;
    // A number of two digits at most, with a letter at most behind it.
    return end > 1 && end < 4 && plain.size() - end < 2 ? std::stoi(plain.substr(1, end - 1)) : 0;
}

/// The metal that a text names, if groups are told by it; empty if it names none, or several.
std::string_view group_metal_in(std::string_view text) {
    const std::string low = lowered(text);
    std::string_view out;
    for (const std::string_view metal : group_metals) {
        if (low.find(metal) == std::string::npos || (out == "stainless" && metal == "steel")) continue;
        if (!out.empty()) return "";
        out = metal;
    }
    return out;
}

/// The metals that a group is of; empty if that is not known.
std::vector<std::string_view> metals_of(const std::string &group) {
    std::vector<std::string_view> out;
    const int number = p_number(group);
    for (const auto &one : of_metals)
        if (number > 0 && one.first <= number && number <= one.last) out.push_back(one.metal);
    for (const auto &one : of_d17_1)
        if (same_word(one.name, group)) out = words_of(one.metals);
    // A group that is a metal's name; every stainless steel is a steel.
    if (const std::string_view named = group_metal_in(group); !named.empty()) {
        out.push_back(named);
        if (named == "steel") out.emplace_back("stainless");
    }
    return out;
}

} // namespace

std::string group_of_another_metal(const CouponRecord &coupon) {
    const std::string group = coupon.get("metal-group"), material = coupon.get("material");
    const std::string_view metal = group_metal_in(material);
    const auto metals = metals_of(group);
    if (metal.empty() || metals.empty()) return "";
    return std::find(metals.begin(), metals.end(), metal) == metals.end()
               ? "metal group " + shown(group) + ", material " + shown(material)
               : "";
}

} // namespace beadbook
