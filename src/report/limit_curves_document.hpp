#pragma once

#include "operations/limit_curves.hpp"
#include "report/document.hpp"

namespace beadbook {

/// Each rule with its limits over thickness as a picture and as a table, then those without a curve and why.
Document document_of(const LimitCurves &curves);

/// Why no curve is drawn of it.
std::string why_no_curve(const LimitCurves &curves, const UncurvedRule &other);

} // namespace beadbook
