#pragma once

#include "report/proof_document.hpp"

#include <nlohmann/json.hpp>

namespace beadbook::render {

nlohmann::json standings_json(const StandingCount &count);

/// Every part of the proof of an accepted class.
nlohmann::json proof_json(const Case &c, const Judged &judged, std::size_t class_index);

} // namespace beadbook::render
