#pragma once

#include "criteria/model.hpp"
#include "criteria/pieces.hpp"

namespace beadbook {

/// What must hold of a coupon for the set to speak of it, and of a find for the rule to: the scope without
/// the parts that ask first whether they apply, `when` and `where`.
std::vector<Condition> conditions_of(const CriteriaSet &set, const Rule &rule);

/// In which units the printed values of the rule are to be looked at: one, where none is printed in two.
std::vector<Unit> units_to_try(const CriteriaSet &set, const Rule &rule);

/// Whether one sum may be over another, where those conditions hold; strictly, or at least as large.
std::optional<bool> may_be_over(const Alternatives &where, const Formula &one, const Formula &other,
                                Unit unit, bool strictly = true);

/// Whether `above` is under `below` where one quantity is at an edge, whatever else the two hang on.
bool falls_at(const Exact &edge, Slot by, const Formula &below, const Formula &above, Unit unit);

/// From one row of a table to the next no standard goes farther. Common practice, no source; what shipped
/// sets do lies within.
constexpr std::int64_t most_jump = 5;

/// Whether `above` is there more than so many times `below`.
bool jumps_at(const Exact &edge, Slot by, const Formula &below, const Formula &above, std::int64_t times);

/// Whether the first limit lets more through than the second, somewhere. Nothing where that cannot be told
/// exactly (products of quantities). Only of two values. With `alike`, only where all quantities of a kind
/// are the same is looked at.
std::optional<bool> lets_more_through(const Limit &one, const Limit &other, Compare compare,
                                      const std::vector<Condition> &where, const std::vector<Unit> &units,
                                      bool alike = false);

/// "differ about 25 times ...", of two plain sizes that no standard lets stand side by side, or of two shares
/// of one quantity; else empty.
std::string times_apart(const Limit &one, const Limit &other);

/// Whether a tenth, or ten times, of a limit fits between two others, of which either may be missing.
bool fits_by_ten(const Limit &limit, const Limit *stricter, const Limit *looser, bool upper);

} // namespace beadbook
