#pragma once

#include "operations/reading.hpp"

#include <string>
#include <vector>

namespace beadbook {

// As render/schemas/practice.json describes it.
std::string json_text(const std::vector<std::shared_ptr<const Practice>> &all,
                      const std::vector<std::string> &notes = {});
std::string json_text(const Practice &practice, const std::vector<std::string> &notes = {});
std::string json_text(const std::vector<ConditionInfo> &conditions,
                      const std::vector<std::string> &notes = {});
std::string json_text(const Checked<Practice> &checked, const std::vector<std::string> &notes = {});

} // namespace beadbook
