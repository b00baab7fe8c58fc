#pragma once

#include "criteria/limit_order.hpp"

#include <optional>
#include <string>
#include <vector>

namespace beadbook {

/// A shape that is asked for, as a condition beside the others; nothing is asked by an unknown one.
void add_shape(std::vector<Condition> &conditions, Shape shape);

/// Of all that a rule, or a gap, says it speaks of: `when`, `where` and its shape.
template <class Part>
std::vector<Condition> asked_by(const Part &part) {
    std::vector<Condition> out = part.when;
    out.insert(out.end(), part.where.begin(), part.where.end());
    add_shape(out, part.shape);
    return out;
}

/// What the scope covers, where all of `holding` holds and no list of `taken_out` does: of what, in words,
/// beside `holding` ("thinner member over 0.25 in to 1 in"), empty where the lists take nothing out of it.
/// Nothing where none is left, or where that cannot be told.
std::optional<std::string> remainder_of(const CriteriaSet &set, const std::vector<Condition> &holding,
                                        const std::vector<std::vector<Condition>> &taken_out);

} // namespace beadbook
