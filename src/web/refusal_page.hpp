#pragma once

#include "web/visit.hpp"

namespace beadbook {

/// The HTTP status of a refusal: of something that was asked for, or sent.
int status_of(const Refusal &refusal, bool writes);

/// A message in the words of a page, which has neither files nor lines of them.
std::string page_words(const std::string &message);
/// What was found and expected, and links to what would mend it.
std::string refusal_html(const Refusal &refusal);
/// The field that was not given, as a control that gives it; empty if none is missing.
std::string asked_for(const Visit &visit, const Refusal &refusal);

/// The refusal as a page of its own. What was sent stands in it, to be sent again with the field that was
/// missing.
Answer refusal_page(Visit &visit, const Refusal &refusal);

} // namespace beadbook
