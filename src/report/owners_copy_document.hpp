#pragma once

#include "operations/owners_copy.hpp"
#include "report/document.hpp"

namespace beadbook {

/// What was entered: each class with its value or its page, and by whom.
Document document_of(const Confirmed &done);
Document document_of(const Filled &done);
Document document_of(const CopyRetracted &done);
/// The blanks of a set, open ones first, and what is confirmed of it.
Document document_of(const CopySheet &sheet);
/// How many blanks are open, a set a line.
Document document_of(const std::vector<CopySheet> &sheets);

} // namespace beadbook
