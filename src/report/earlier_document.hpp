#pragma once

#include "operations/earlier.hpp"
#include "report/document.hpp"

namespace beadbook {

/// How the last of these coupons compares with the ones before: what came of them, what changed since the
/// nearest one, and all in a table. Nothing but what is on record is told: what is rejected reads as
/// rejected. That there is none before, where it is alone.
void add_earlier(Document &doc, const AlikeCoupons &alike);

/// The same coupons in a row, without one that stands out.
void add_alike(Document &doc, const std::vector<AlikeCoupons> &all);

} // namespace beadbook
