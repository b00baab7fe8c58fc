#pragma once

#include "report/record_document.hpp"
#include "report/standing_document.hpp"

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

namespace beadbook {

// As the schema of the same name as the command describes it: enrol, welder, welders, due, qualify, carry,
// used, trained, renew, extend, revoke, retract, record.
std::string json_text(const Enrolled &done, const std::vector<std::string> &notes = {});
std::string json_text(const EnrolledMany &done, const std::vector<std::string> &notes = {});
std::string json_text(const WelderChanged &done, const std::vector<std::string> &notes = {});
std::string json_text(const WelderStanding &standing, const std::vector<std::string> &notes = {});
std::string json_text(const std::vector<WelderStanding> &all, const std::vector<std::string> &notes = {});
std::string json_text(const DueList &due, const std::vector<std::string> &notes = {});
std::string json_text(const Granted &granted, const std::vector<std::string> &notes = {});
std::string json_text(const QualifiedMany &done, const std::vector<std::string> &notes = {});
std::string json_text(const ProcessLogged &done, const std::vector<std::string> &notes = {});
std::string json_text(const StandingChange &change, const std::vector<std::string> &notes = {});
std::string json_text(const Retracted &done, const std::vector<std::string> &notes = {});
std::string json_text(const RecordSheet &sheet, const std::vector<std::string> &notes = {});
std::string json_text(const PaperWritten &done, const std::vector<std::string> &notes = {});

namespace render {
/// What rules ask after a test that failed, under "next" if they do.
void add_next(nlohmann::json &json, const std::vector<NextRetest> &all);
/// Tests that failed, under "failed" if there are any.
void add_failed(nlohmann::json &json, const std::vector<WelderStanding::Failed> &all);
} // namespace render

} // namespace beadbook
