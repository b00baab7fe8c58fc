#include "facts/each_process.hpp"

#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {

std::vector<std::string> processes_of(const CouponRecord &coupon) {
    const std::string text = coupon.get("process");
    if (text.empty()) return {};
    std::vector<std::string> out;
    for (const auto &part : parts_of_several(text)) out.push_back(part.substr(0, part.find(' ')));
    return out;
}

std::string said_of_process(const CouponRecord &coupon, const std::string &field, std::size_t p,
                            std::size_t count, bool shared) {
    const std::string text = coupon.get(field);
    const auto parts = parts_of_several(text);
    if (parts.size() == count) return parts[p];
    return count == 1 || (shared && parts.size() == 1) ? text : "";
}

std::string clashes_with_process(const CouponRecord &coupon, const std::string &field, ProcessClash clash) {
    const auto processes = processes_of(coupon);
    const std::string said = coupon.get(field);
    if (processes.empty() || said.empty()) return "";
    const auto words = parts_of_several(said);
    bool none_fits = words.size() != processes.size(), one_clashes = false;
    for (std::size_t p = 0; p < processes.size(); ++p) {
        one_clashes = one_clashes || (words.size() == processes.size() && clash(processes[p], words[p]));
        none_fits = none_fits && std::any_of(words.begin(), words.end(), [&](const std::string &word) {
                        return clash(processes[p], word);
                    });
    }
    return none_fits || one_clashes ? field + " " + shown(said) + ", process " + shown(coupon.get("process"))
                                    : "";
}

} // namespace beadbook
