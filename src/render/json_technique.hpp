#pragma once

#include "operations/computing.hpp"
#include "operations/exam_validity.hpp"
#include "operations/finding.hpp"

#include <string>
#include <vector>

namespace beadbook {

// As render/schemas/valid.json, methods.json and compute.json describe it.
std::string json_text(const CouponValidity &validity, const std::vector<std::string> &notes = {});
std::string json_text(const MethodsResult &methods, const std::vector<std::string> &notes = {});
std::string json_text(const CalculationList &list, const std::vector<std::string> &notes = {});
std::string json_text(const CalculationWanted &wanted, const std::vector<std::string> &notes = {});
std::string json_text(const Calculated &calculated, const std::vector<std::string> &notes = {});

} // namespace beadbook
