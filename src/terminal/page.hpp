#pragma once

#include "operations/paper.hpp"
#include "report/document.hpp"
#include "terminal/call.hpp"

namespace beadbook {

/// Whether the call asks for a page: --html or --pdf.
bool wants_page(const Call &call);

/// Writes the document as it goes on paper, with what it rests on, to the new files that --html and --pdf
/// name, and tells that it did. Throws UsageError: neither is given.
ExitCode tell_page(Call &call, Document document,
                   const std::vector<std::shared_ptr<const CriteriaSet>> &sets = {},
                   const std::vector<std::string> &signatures = {});
/// The same as it stands, without a foot: labels.
ExitCode tell_bare_page(Call &call, const Document &document);

} // namespace beadbook
