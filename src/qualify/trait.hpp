#pragma once

#include "criteria/quantity_name.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace beadbook {

/// A property of a weld that a qualification can be limited by: a word or a size.
enum class Trait : std::uint8_t {
    joint,
    form,
    process,
    transfer,
    position,
    progression,
    rotated,
    metal_group,
    filler_group,
    filler_type,
    backing,
    runs,
    thickness,
    weld_thickness,
    diameter,
    layers,
};
constexpr std::size_t trait_count = 16;
constexpr std::size_t word_traits = 12; ///< the words come first
constexpr std::size_t index_of(Trait t) { return static_cast<std::size_t>(t); }
constexpr bool is_size(Trait t) { return index_of(t) >= word_traits; }

struct TraitInfo {
    std::string_view name;        ///< as files write it: "metal group"; options have a dash instead
    std::optional<Quantity> size; ///< sizes
    std::optional<Fact> fact;     ///< words that are the same in every rule set
};
const TraitInfo &info(Trait t);
std::optional<Trait> trait_named(std::string_view name);
std::vector<std::string> trait_names();
/// As an option and a coupon's field: "metal-group".
std::string field_of(Trait t);

} // namespace beadbook
