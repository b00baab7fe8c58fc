#pragma once

#include "operations/after_test.hpp"
#include "operations/judging.hpp"
#include "report/document.hpp"

namespace beadbook {

/// What rules for welders ask after a test that failed, why it counts as such a one where its verdict no more
/// says so, and what rests on it and is in doubt. It stands behind the verdict, which it may go beyond.
void add_after_test(Document &doc, const AfterTest &after, const std::optional<Explained> &now);

} // namespace beadbook
