#pragma once

#include "operations/one_more.hpp"
#include "report/document.hpp"

namespace beadbook {

/// A list, a coupon each; nothing where there is none.
void add_one_more(Document &doc, const std::vector<OneMore> &all);

} // namespace beadbook
