#pragma once

#include "operations/boundaries.hpp"
#include "operations/reading.hpp"
#include "operations/trying.hpp"
#include "report/limit_curves_document.hpp"

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

namespace beadbook {

// As render/schemas/criteria.json describes it.
std::string json_text(const std::vector<std::shared_ptr<const CriteriaSet>> &sets,
                      const std::vector<std::string> &notes = {});
/// The blanks of a set, as they are filled in it.
nlohmann::json blanks_json(const CriteriaSet &set);
std::string json_text(const CriteriaSet &set, const std::vector<std::string> &notes = {});
std::string json_text(const LimitCurves &curves, const std::vector<std::string> &notes = {});
std::string json_text(const Vocabulary &vocabulary, const std::vector<std::string> &notes = {});
std::string json_text(const CheckedCriteria &checked, const std::vector<std::string> &notes = {});
std::string json_text(const Boundaries &all, const std::vector<std::string> &notes = {});
std::string json_text(const TriedCases &tried, const std::vector<std::string> &notes = {});
std::string json_text(const std::vector<TriedCases> &all, const std::vector<std::string> &notes = {});

} // namespace beadbook
