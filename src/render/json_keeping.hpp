#pragma once

#include "report/keeping_document.hpp"

namespace beadbook {

std::string json_text(const Verified &verified, const std::vector<std::string> &notes = {});
std::string json_text(const VerifiedShops &all, const std::vector<std::string> &notes = {});
std::string json_text(const JoinedShops &done, const std::vector<std::string> &notes = {});
std::string json_text(const Refreshed &done, const std::vector<std::string> &notes = {});
std::string json_text(const SealWritten &done, const std::vector<std::string> &notes = {});
std::string json_text(const BackedUp &done, const std::vector<std::string> &notes = {});
std::string json_text(const Written &done, const std::vector<std::string> &notes = {});
std::string json_text(const Imported &done, const std::vector<std::string> &notes = {});

} // namespace beadbook
