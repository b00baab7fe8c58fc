#pragma once

#include "report/rejudging_document.hpp"

namespace beadbook {

std::string json_text(const Rejudged &done, const std::vector<std::string> &notes = {});

} // namespace beadbook
