#pragma once

#include "facts/grade.hpp"
#include "facts/stamp.hpp"
#include "measure/print.hpp"
#include "records/described_since.hpp"
#include "records/taken_back.hpp"

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

/// Pieces of JSON that several results share. Shapes only grow; each command's is described in schemas/.
namespace beadbook::render {

/// The text that is printed: indented, with the doubts under "notes" where the result is an object and there
/// are any.
std::string finished(nlohmann::json json, const std::vector<std::string> &notes);

/// {"text": "0.06 in", "exact": "1524000"}: rounded for reading, and the exact base units.
nlohmann::json number(const Exact &value, Dimension dimension, Unit unit);
/// The same with the text that is printed.
nlohmann::json number(const Exact &value, const std::string &text);

/// Changes of a coupon, under "described otherwise since" if there are any.
void add_described_since(nlohmann::json &json, const std::vector<DescribedSince> &changes);

/// Why a grade must be given again, and by which other set it was given.
void add_standing(nlohmann::json &json, const GradeStanding &standing);

/// Finds under "logged otherwise before", exams under "exams withdrawn", if there are any.
void add_taken_back(nlohmann::json &json, const std::vector<TakenBack> &things);

} // namespace beadbook::render
