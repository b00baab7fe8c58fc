#pragma once

#include "facts/welder_record.hpp"
#include "records/entry.hpp"

#include <nlohmann/json_fwd.hpp>

/// Welders, qualifications and events, in entries.
namespace beadbook::codec {

nlohmann::json json_of(const WelderRecord &welder);
WelderRecord welder_from(const std::string &mark, const nlohmann::json &json);

nlohmann::json json_of(const WelderEvent &event);
WelderEvent event_from(const Entry &entry);

nlohmann::json json_of(const std::vector<GrantedRange> &range);

/// Form 2 keeps a range as rule ids, words and exact edges; form 1 kept it as it was printed, and is read
/// without its numbers.
nlohmann::json json_of(const QualificationRecord &qualification);
QualificationRecord qualification_from(const nlohmann::json &json);

} // namespace beadbook::codec
