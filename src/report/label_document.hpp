#pragma once

#include "operations/paper.hpp"
#include "report/document.hpp"

namespace beadbook {

/// Sheets of labels, 56 mm x 29 mm each: the mark, who welded it, and a code that opens it.
Document document_of(const CouponLabels &labels);

} // namespace beadbook
