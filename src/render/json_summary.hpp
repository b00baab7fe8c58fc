#pragma once

#include "report/summary_document.hpp"

namespace beadbook {

std::string json_text(const Summaries &all, const std::vector<std::string> &notes = {});

} // namespace beadbook
