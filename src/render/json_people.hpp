#pragma once

#include "report/people_document.hpp"

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

namespace beadbook {

// As the schema of the same name as the command describes it: person, people, equipment.
std::string json_text(const PersonWritten &done, const std::vector<std::string> &notes = {});
std::string json_text(const PersonSheet &sheet, const std::vector<std::string> &notes = {});
std::string json_text(const PeopleList &list, const std::vector<std::string> &notes = {});
std::string json_text(const EquipmentWritten &done, const std::vector<std::string> &notes = {});
std::string json_text(const EquipmentSheet &sheet, const std::vector<std::string> &notes = {});
std::string json_text(const EquipmentList &list, const std::vector<std::string> &notes = {});

/// One end of a person's or a piece of equipment's, in the list of `due`.
nlohmann::json ending_json(const Ending &ending);

} // namespace beadbook
