#pragma once

#include "report/settings_document.hpp"

#include <string>
#include <vector>

namespace beadbook {

std::string json_text(const SettingsInForce &all, const std::vector<std::string> &notes = {});
std::string json_text(const PlainText &plain, const std::vector<std::string> &notes = {});

} // namespace beadbook
