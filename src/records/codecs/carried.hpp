#pragma once

#include "facts/carried_fact.hpp"
#include "records/codecs/located.hpp"

#include <nlohmann/json_fwd.hpp>

/// What stood against a coupon elsewhere, in entries and in exchange files.
namespace beadbook::codec {

inline constexpr const char *carried_key = "before";

void put_carried(nlohmann::json &out, const std::vector<CarriedFact> &facts);
/// Under the key of a coupon. Throws DataError: not of this shape.
std::vector<CarriedFact> carried_from(const nlohmann::json &coupon);
/// The list of an exchange file, where a doubled key is a mistake too.
std::vector<CarriedFact> carried_from(const Located &list);

/// As a cell of a table: nothing, or the list.
std::string carried_cell(const std::vector<CarriedFact> &facts);
std::vector<CarriedFact> carried_from_cell(const std::string &cell);

} // namespace beadbook::codec
