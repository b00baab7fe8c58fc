#pragma once

#include "operations/boundaries.hpp"
#include "report/document.hpp"

namespace beadbook {

/// A table a rule, to be read beside the standard: for each class and coupon what is said just under, at and
/// just over the limit; then what the worked cases leave untried.
Document document_of(const Boundaries &all);

/// "T 0.1 in, L 48 in": what tells the coupon from the others of its rule, by the set's own names.
std::string coupon_words(const CriteriaSet &set, const BoundaryCase &one);
/// "T 0.5 in", "joint plug".
std::string named_words(const CriteriaSet &set, const NamedPoint &named);
/// Why there is none.
std::string_view words_of(NoBoundary::Why why);
/// "within", "over", "not heard".
std::string_view words_of(BoundaryTry::Found found);

} // namespace beadbook
