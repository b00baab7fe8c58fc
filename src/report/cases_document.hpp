#pragma once

#include "operations/trying.hpp"
#include "report/document.hpp"

namespace beadbook {

/// What does not hold, each case with the verdicts that came out and why; then what the cases leave untried.
Document document_of(const TriedCases &tried);
Document document_of(const std::vector<TriedCases> &all);

/// What the worked cases leave untried: rules that decide none, limits tried from one side only.
void add_untried(Document &out, const TriedCases &tried);

/// "A accept, B reject".
std::string verdicts_words(const TriedCases &tried, const TriedCase &one);

} // namespace beadbook
