#pragma once

#include "operations/rejudging.hpp"
#include "report/document.hpp"

namespace beadbook {

/// Which verdicts would change and by which rules, how often each rule rejects on either side, and what could
/// not be compared.
Document document_of(const Rejudged &done);

} // namespace beadbook
