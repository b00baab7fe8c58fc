#pragma once

#include "operations/held_work.hpp"
#include "operations/ranging.hpp"

#include <string>
#include <vector>

namespace beadbook {

// As render/schemas/plan.json, may.json and range.json describe it.
std::string json_text(const PlanResult &plan, const std::vector<std::string> &notes = {});
std::string json_text(const HeldWork &work, const std::vector<std::string> &notes = {});
std::string json_text(const RangeResult &result, const std::vector<std::string> &notes = {});

} // namespace beadbook
