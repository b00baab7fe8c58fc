#pragma once

#include "cli/call.hpp"
#include "report/document.hpp"

namespace beadbook {

/// --html, of commands whose result can be a page to print.
Option page_option();
/// Writes the page to the new file that --html names, and tells that it did.
ExitCode tell_page(Call &call, const Document &document);

} // namespace beadbook
