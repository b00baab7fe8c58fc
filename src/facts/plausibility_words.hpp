#pragma once

#include "criteria/quantity_name.hpp"
#include "facts/coupon_record.hpp"
#include "language/names.hpp"

#include <array>
#include <span>
#include <string_view>

namespace beadbook {

/// Words that these rules may speak of, beside the sizes of coupon and find.
enum class Said : std::uint8_t {
    joint,
    form,
    seam,
    magnetic,
    shape,
    kind,
    position,
    metal,
    group,
    sizes,
    method,
    micro,
    loss,
    type,
    units,
    fraction,
    joint_form,
    of_fillet,
    gauge,
    rotated,
    metal_group,
    no_filler,
    electrode,
    filler_metal,
    filler_form,
    transfer,
    flux,
    spoiled,
    backing,
    closed,
    runs,
    layered,
    fillet_filler,
    butt_fillet,
    root_find,
    face_find,
    measured_in,
    unit_written
};
inline constexpr std::size_t said_count = 38;
/// Types that a rule may speak of by name; the last stands for all the rest, so that `is not` is known of
/// them.
inline constexpr std::array<std::string_view, 8> spoken_types{
    "fillet size",        "throat",  "excess weld metal", "excessive convexity",
    "excess penetration", "overlap", "root concavity",    "other"};
/// What they speak of beside the sizes of a find, in the slots of pairs and groups, of which they never
/// speak.
inline constexpr Quantity across = Quantity::gap, largest_fillet = Quantity::larger_size,
                          largest_throat = Quantity::smaller_size;
/// Days that they may speak of.
enum class Dated : std::uint8_t { welded, examined, examined_undated };

/// Several facts of a coupon that are held against each other: what they say where they contradict each
/// other, else empty. A rule speaks of it as `name is other`.
struct HeldTogether {
    Said said;
    std::string_view name, contradicting;
    std::string (*of)(const CouponRecord &);
};
std::span<const HeldTogether> held_together();

std::vector<std::string> words_of_fact(Fact fact);

/// All that rules may speak of.
const Names &plausibility_names();

} // namespace beadbook
