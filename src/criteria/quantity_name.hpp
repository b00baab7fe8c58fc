#pragma once

#include "language/missing.hpp"
#include "measure/quantity.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace beadbook {

/// Everything a formula may speak of. What is known depends on where the formula stands: a coupon's
/// quantities everywhere, an indication's in a rule on one indication, a pair's between neighbours, and
/// the longest of a group where a group is formed.
enum class Quantity : std::uint8_t {
    // the coupon
    thinner,
    thicker,
    weld_thickness,
    bead_thickness,
    throat,
    weld_length,
    outside_diameter,
    fillet_size,
    longest_leg,
    weld_width,
    design_temperature,
    layers,
    // one indication
    length,
    width,
    depth,
    height,
    size,
    angle,
    area,
    nearest_gap,
    nearest_like_gap,
    // two neighbours
    gap,
    smaller_size,
    larger_size,
    shorter_length,
    longer_length,
    // a group in line
    longest,
};
constexpr std::size_t quantity_count = 27;
constexpr std::size_t coupon_quantities = 12;
constexpr std::size_t index_of(Quantity q) { return static_cast<std::size_t>(q); }

enum class Scope : std::uint8_t { coupon, indication, pair, group };

struct QuantityInfo {
    std::string_view name;
    Dimension dimension;
    Scope scope;
    std::string_view field = {}; ///< of a coupon's: the field that gives it, if it is called otherwise
};
const QuantityInfo &info(Quantity q);

/// Words that a coupon's facts may take, for `joint is groove` and the like.
enum class Fact : std::uint8_t {
    joint,
    joint_form,
    form,
    seam,
    magnetic,
    sides,
    inside,
    stress,
    mechanical,
    purpose,
    operation,
    process,
    position,
    material
};
constexpr std::size_t fact_count = 14;
struct FactInfo {
    std::string_view name;
    std::vector<std::string> words; ///< word k is kept as k + 1; 0 is "not known"
    std::string_view asked = {};    ///< what is said where it is missing, beside its name
};
const FactInfo &info(Fact fact);
std::optional<Fact> fact_named(std::string_view name);

/// What people say of one indication in a word.
enum class Attribute : std::uint8_t { side, transition };
constexpr std::size_t attribute_count = 2;
const FactInfo &info(Attribute attribute);
std::optional<Attribute> attribute_named(std::string_view name);

/// The position + 1 of `word` in the list, or 0.
std::uint8_t word_index(const FactInfo &info, std::string_view word);

// What kept a rule from being decided. Words of the coupon stand before those of an indication.
constexpr Missing lack_of(Quantity q) { return Missing::quantity(static_cast<Slot>(q)); }
constexpr Missing lack_of(Fact f) { return Missing::word(static_cast<Slot>(f)); }
constexpr Missing lack_of(Attribute a) {
    return Missing::word(static_cast<Slot>(fact_count + static_cast<std::size_t>(a)));
}
/// By the names that people type: "the thickness (thinner member)", "the joint-form", "the depth", "the place
/// on the weld".
std::vector<std::string> names_of(const Missing &missing);

} // namespace beadbook
