#pragma once

#include "qualify/range.hpp"
#include "report/paint.hpp"

#include <nlohmann/json.hpp>

namespace beadbook {

/// What a test qualifies, variable by variable, each part with its rule.
std::string explain_range(const RangeRules &rules, const std::vector<VariableRange> &range, Unit unit);
nlohmann::json range_json(const std::vector<VariableRange> &range, Unit unit);

/// Why one variable does not cover one weld of the work: what the test allows, what the work has.
std::string explain_fail(const VariableCover &fail, const std::vector<VariableRange> &range, const Weld &work,
                         Unit unit);

nlohmann::json weld_json(const Weld &weld, Unit unit);

} // namespace beadbook
