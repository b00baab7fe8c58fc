#pragma once

#include "facts/equipment_record.hpp"
#include "facts/person_record.hpp"

#include <nlohmann/json_fwd.hpp>

/// People and equipment, in entries; and equipment as an exam names it.
namespace beadbook::codec {

nlohmann::json json_of(const PersonRecord &person);
PersonRecord person_from(const std::string &name, const nlohmann::json &json);

nlohmann::json json_of(const EquipmentRecord &equipment);
EquipmentRecord equipment_from(const std::string &serial, const nlohmann::json &json);

nlohmann::json json_of(const std::vector<EquipmentUsed> &used);
/// A list of these, or of serial numbers alone. Throws DataError.
std::vector<EquipmentUsed> equipment_used_from(const nlohmann::json &json);
/// The keys of one of them; all hold texts.
const std::vector<std::string> &equipment_used_keys();

} // namespace beadbook::codec
