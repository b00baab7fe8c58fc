#pragma once

#include "cli/call.hpp"
#include "operations/selection.hpp"

namespace beadbook {

/// The options that say which coupons a command is about.
std::vector<Option> selection_options();
/// What they say. Throws UsageError, InputError.
Selection selection_of(const Call &call);
/// Throws UsageError if any is given: they go with --all, and a coupon was named.
void check_no_selection(const Call &call);

} // namespace beadbook
