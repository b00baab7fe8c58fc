#pragma once

#include "operations/reading.hpp"

#include <string>
#include <vector>

namespace beadbook {

// As render/schemas/rules.json describes it.
std::string json_text(const std::vector<std::shared_ptr<const RangeRules>> &all,
                      const std::vector<std::string> &notes = {});
std::string json_text(const RangeRules &rules, const std::vector<std::string> &notes = {});
std::string json_text(const Checked<RangeRules> &checked, const std::vector<std::string> &notes = {});

} // namespace beadbook
