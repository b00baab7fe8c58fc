#pragma once

#include "report/judgement_document.hpp"

namespace beadbook {

std::string json_text(const Judged &judged, const std::vector<std::string> &notes = {});
/// One of a list, without the list's brackets.
std::string json_text(const JudgedOrNot &one, const std::vector<std::string> &notes = {});
std::string json_text(const Explained &explained, const std::vector<std::string> &notes = {});
/// The proof is always whole in JSON.
template <class Result>
std::string json_text(const InFull<Result> &result, const std::vector<std::string> &notes = {}) {
    return json_text(result.of, notes);
}
std::string json_text(const Graded &graded, const std::vector<std::string> &notes = {});

} // namespace beadbook
