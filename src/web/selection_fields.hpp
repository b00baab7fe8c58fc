#pragma once

#include "operations/selection.hpp"
#include "web/visit.hpp"

namespace beadbook {

/// Which coupons a query asks for, by the names of the form below. Throws Refusal at the field: a word that
/// is none of those expected, a day that is none.
Selection selection_in(const SentFields &fields);
/// The same selection as a query, with its question mark; empty if nothing is asked for.
std::string query_of(const Selection &of);
/// "?" or "&", whichever goes on with a query.
std::string query_with(const std::string &query, const std::string &name, const std::string &value);

/// A control for each thing that may be asked for; it asks for a page and writes nothing. What was sent
/// stands in it again, with the refusal at its field.
std::string selection_form(const std::string &path, const SentFields &sent, Catalogue &catalogue,
                           const Refusal *refused, const std::string &more = "");

} // namespace beadbook
