#pragma once

#include "report/judgement_document.hpp"

namespace beadbook {

std::string json_text(const Judged &judged, const std::vector<std::string> &notes = {});
/// One of a list, without the list's brackets.
std::string json_text(const JudgedOrNot &one, const std::vector<std::string> &notes = {});
std::string json_text(const Explained &explained, const std::vector<std::string> &notes = {});
std::string json_text(const Graded &graded, const std::vector<std::string> &notes = {});

} // namespace beadbook
