#pragma once

#include "cli/call.hpp"
#include "operations/selection.hpp"

namespace beadbook {

/// The options that say which coupons a command is about.
std::vector<Option> selection_options();
/// What they say. Throws UsageError, InputError.
Selection selection_of(const Call &call);
/// Throws UsageError if any is given: they go with --all, and a coupon was named.
/// Throws UsageError: they go with `with`.
void check_no_selection(const Call &call, std::string_view with = "--all");
/// What a list that came out empty was perhaps not meant to ask for; a word that no coupon has.
std::vector<std::string> notes_on_empty(Call &call, const Selection &of, bool empty);

} // namespace beadbook
