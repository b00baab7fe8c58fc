#pragma once

#include "operations/ranging.hpp"
#include "report/document.hpp"

namespace beadbook {

/// What a coupon would qualify, variable by variable, each part with its rule, and what the rules do not
/// hold.
Document document_of(const RangeResult &result);

} // namespace beadbook
