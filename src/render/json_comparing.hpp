#pragma once

#include "report/comparing_document.hpp"

namespace beadbook {

std::string json_text(const ComparedSets &all, const std::vector<std::string> &notes = {});

} // namespace beadbook
