#pragma once

#include "judge/coupon.hpp"

#include <vector>

namespace beadbook {

/// What the rules see: an indication, or several neighbours that the set counts as one.
struct Item {
    std::vector<std::size_t> members; ///< indices of indications; the first gives type and exam
    std::optional<Span> place;
    std::optional<Span> across;
    Environment::Values measures;
    std::array<std::uint8_t, attribute_count> words{};
    Truth counts = Truth::yes; ///< relevance
    Shape shape = Shape::unknown;
    Missing doubts;            ///< why `counts` or `shape` is unknown
    bool may_merge = false;    ///< its place is unknown, so it may be one with another
};

/// Merges neighbours, then settles shape and relevance, all by the set's own notions.
std::vector<Item> make_items(const CriteriaSet &set, const Coupon &coupon,
                             const std::vector<Indication> &indications, const Vocabulary &vocabulary);

/// Truth of all conditions for one item.
Truth holds_for(const std::vector<Condition> &conditions, const Coupon &coupon, const Environment::Values &measures,
                const std::array<std::uint8_t, attribute_count> &words, Missing &missing);

} // namespace beadbook
