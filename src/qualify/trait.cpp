#include "qualify/trait.hpp"

#include <algorithm>
#include <array>

namespace beadbook {

const TraitInfo &info(Trait t) {
    static const std::array<TraitInfo, trait_count> table{{
        {"joint", {}, Fact::joint},
        {"form", {}, Fact::form},
        {"process", {}, {}},
        {"transfer", {}, {}},
        {"position", {}, {}},
        {"progression", {}, {}},
        {"rotated", {}, {}},
        {"metal group", {}, {}},
        {"filler group", {}, {}},
        {"filler type", {}, {}},
        {"backing", {}, {}},
        {"runs", {}, {}},
        {"thickness", Quantity::thinner, {}},
        {"weld thickness", Quantity::weld_thickness, {}},
        {"diameter", Quantity::outside_diameter, {}},
        {"layers", Quantity::layers, {}},
    }};
    return table[index_of(t)];
}

std::optional<Trait> trait_named(std::string_view name) {
    for (std::size_t i = 0; i < trait_count; ++i)
        if (info(static_cast<Trait>(i)).name == name) return static_cast<Trait>(i);
    return std::nullopt;
}

std::vector<std::string> trait_names() {
    std::vector<std::string> out;
    for (std::size_t i = 0; i < trait_count; ++i) out.emplace_back(info(static_cast<Trait>(i)).name);
    return out;
}

std::string field_of(Trait t) {
    std::string out(info(t).name);
    std::replace(out.begin(), out.end(), ' ', '-');
    return out;
}

} // namespace beadbook
