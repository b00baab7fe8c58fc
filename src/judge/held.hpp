#pragma once

#include "judge/evaluation.hpp"

namespace beadbook {

/// An item that a rule speaks of, once its conditions are settled.
struct Member {
    std::uint32_t item = 0;
    Truth certain = Truth::yes; ///< the rule speaks of it and it counts
    Truth covers = Truth::yes;  ///< the rule speaks of it, if it counts
    Missing doubts;
};

/// How much a window or a group holds, and what lies in it.
struct Held {
    Exact value;
    std::optional<Span> place;
    Several<std::uint32_t> items;
};

/// A sum or count from both sides: what is certain, and what it could be at most when missing data turn out
/// for the worst. If nothing is missing, `doubts` is empty and `least` is the answer.
struct HeldBounds {
    Few<Held> least;           ///< the worst window; or one entry a group in line
    std::optional<Exact> most; ///< nothing: no upper bound is known
    Missing doubts;
    Missing missing_window;      ///< the window itself cannot be computed
    std::optional<Exact> window; ///< its length, if it has one
};

/// In the window of one class.
HeldBounds bounds_of(const Evaluation &evaluation, std::size_t rule, std::size_t class_index,
                     std::span<const Member> members);

/// A limit that shrinks in proportion on a weld shorter than its window.
Evaluated prorated(const Exact &limit, const std::optional<Exact> &window, const Coupon &coupon);

} // namespace beadbook
