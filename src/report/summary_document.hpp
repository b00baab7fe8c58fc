#pragma once

#include "operations/summarizing.hpp"
#include "report/document.hpp"

namespace beadbook {

/// "cohort autumn-2026, graded none"; "all coupons".
std::string selection_words(const Selection &of);

/// "7 of 9, 78 % (39 % to 98 %)": with the interval behind it.
std::string share_words(const Share &share);

/// One group, or two side by side: outcome and first-pass yield, then by imperfection, rule, place, joint,
/// welder and week.
Document document_of(const Summaries &all);

} // namespace beadbook
