#pragma once

#include "operations/required_exams.hpp"
#include "qualify/range.hpp"

#include <nlohmann/json_fwd.hpp>

/// JSON of welds, ranges and examinations, as several commands print it. For the renderers of JSON only.
namespace beadbook {

/// What is known of a weld, by trait.
nlohmann::json weld_json(const Weld &weld, Unit unit);
/// What a test qualifies, variable by variable.
nlohmann::json range_json(const std::vector<VariableRange> &range, Unit unit);
nlohmann::json exam_json(const AskedExam &exam);

/// {"clause", "standing", "source"}.
nlohmann::json authority_json(const std::string &clause, const Standing &standing);

} // namespace beadbook
