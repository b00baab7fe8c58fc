#pragma once

#include "report/owners_copy_document.hpp"

namespace beadbook {

// schemas/copy.json
std::string json_text(const Confirmed &done, const std::vector<std::string> &notes = {});
std::string json_text(const Filled &done, const std::vector<std::string> &notes = {});
std::string json_text(const CopyRetracted &done, const std::vector<std::string> &notes = {});
std::string json_text(const CopySheet &sheet, const std::vector<std::string> &notes = {});
std::string json_text(const std::vector<CopySheet> &sheets, const std::vector<std::string> &notes = {});

} // namespace beadbook
