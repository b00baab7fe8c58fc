#pragma once

#include "judge/held.hpp"

namespace beadbook {

/// Of what several methods found, each imperfection once, as the larger that was seen of it. Finds of two
/// methods may be one if their types may (of one family, or one is called by its shape alone and the other is
/// not of another shape), no side speaks against it, and they lie no farther apart than two people read
/// places: 1/128 in (half of the finest lines of a rule), or a tenth of the longer one (common practice, no
/// source). Where a place is not known, one may be one with one of each other method.
Several<Member> counted_once(const Evaluation &evaluation, const Rule &rule, const Several<Member> &members);

} // namespace beadbook
