#pragma once

#include "report/sentence.hpp"

#include <nlohmann/json.hpp>

namespace beadbook {

/// A judgement for programs and for the record: criteria by name, edition and hash, and each class with its
/// verdict and findings, numbers exact (base units as numerator/denominator) and as text.
nlohmann::json judgement_json(const Case &c, const Judgement &judgement);

} // namespace beadbook
