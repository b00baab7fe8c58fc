#pragma once

#include "operations/selection.hpp"
#include "terminal/call.hpp"

namespace beadbook {

/// What the options of the group `selection` say: which coupons a command is about. Throws UsageError,
/// InputError.
Selection selection_of(Call &call);
/// Throws UsageError if any is given: they go with `with`, and a coupon was named.
void check_no_selection(const Call &call, std::string_view with = "--all");
/// What a list that came out empty was perhaps not meant to ask for; a word that no coupon has.
std::vector<std::string> notes_on_empty(Call &call, const Selection &of, bool empty);

} // namespace beadbook
