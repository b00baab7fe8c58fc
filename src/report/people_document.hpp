#pragma once

#include "operations/equipment.hpp"
#include "operations/people.hpp"
#include "operations/standing.hpp"
#include "report/document.hpp"

namespace beadbook {

Document document_of(const PersonWritten &done);
/// One person: certificates and vision tests with how they stand, and what was written when.
Document document_of(const PersonSheet &sheet);
Document document_of(const PeopleList &list);

Document document_of(const EquipmentWritten &done);
Document document_of(const EquipmentSheet &sheet);
Document document_of(const EquipmentList &list);

/// "certificate MT II 4711", "vision test", "calibration (light meter)".
std::string ending_words(const Ending &ending);
std::string to_do_words(const Ending &ending);
/// "in 12 days", "over for 1 day".
std::string time_left(std::int64_t days);

} // namespace beadbook
