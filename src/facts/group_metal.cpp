#include "facts/group_metal.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <array>
#include <cctype>

namespace beadbook {
namespace {

struct Numbers {
    std::string_view metal; ///< a word in the material
    int first, last;        ///< P-numbers of it
};
/// Stainless before steel, as it is called that too. P10 and P11 hold steels of both kinds.
constexpr auto of_metals = std::to_array<Numbers>({{"stainless", 6, 8},
                                                   {"stainless", 10, 10},
                                                   {"steel", 1, 5},
                                                   {"steel", 9, 15},
                                                   {"alumin", 21, 26},
                                                   {"copper", 31, 35},
                                                   {"titanium", 51, 53}});

/// "P8", "P-5A", "p no. 8" as its number; 0: no P-number.
int p_number(const std::string &group) {
    std::string plain;
    for (const char c : lowered(group))
        if (std::isalnum(static_cast<unsigned char>(c)) != 0) plain += c;
    if (plain.starts_with("pno")) plain.erase(1, 2);
    if (plain.size() < 2 || plain.front() != 'p') return 0;
    std::size_t end = 1;
    while (end < plain.size() && std::isdigit(static_cast<unsigned char>(plain[end])) != 0) ++end;
    // A number of two digits at most, with a letter at most behind it.
    return end > 1 && end < 4 && plain.size() - end < 2 ? std::stoi(plain.substr(1, end - 1)) : 0;
}

} // namespace

std::string group_of_another_metal(const CouponRecord &coupon) {
    const std::string group = coupon.get("metal-group"), material = coupon.get("material");
    const std::string low = lowered(material);
    const int number = p_number(group);
    const auto named = std::find_if(of_metals.begin(), of_metals.end(), [&](const Numbers &one) {
        return low.find(one.metal) != std::string::npos;
    });
    if (number == 0 || named == of_metals.end()) return "";
    const bool fits = std::any_of(of_metals.begin(), of_metals.end(), [&](const Numbers &one) {
        return one.metal == named->metal && one.first <= number && number <= one.last;
    });
    const bool known = std::any_of(of_metals.begin(), of_metals.end(), [&](const Numbers &one) {
        return one.first <= number && number <= one.last;
    });
    return fits || !known ? "" : "metal group " + shown(group) + ", material " + shown(material);
}

} // namespace beadbook
