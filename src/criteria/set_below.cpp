#include "criteria/set_below.hpp"

#include <algorithm>

namespace beadbook {

const Rule *SetBelow::rule(const std::string &id) const {
    if (!set) return nullptr;
    const auto found =
        std::find_if(set->rules.begin(), set->rules.end(), [&](const Rule &one) { return one.id == id; });
    return found == set->rules.end() ? nullptr : &*found;
}

std::optional<std::size_t> SetBelow::class_of(const std::string &id) const {
    if (!set) return std::nullopt;
    if (stands_for.empty()) return set->class_index(id);
    const auto found = std::find_if(stands_for.begin(), stands_for.end(),
                                    [&](const auto &pair) { return pair.first == id; });
    return found == stands_for.end() ? std::nullopt : set->class_index(found->second);
}

} // namespace beadbook
