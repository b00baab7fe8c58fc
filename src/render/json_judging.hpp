#pragma once

#include "operations/streaming.hpp"
#include "report/grading_document.hpp"
#include "report/judgement_document.hpp"
#include "report/learner_document.hpp"

#include <nlohmann/json_fwd.hpp>

namespace beadbook {

namespace render {
/// A welder's page, for those that hold many.
nlohmann::json explained_json(const Explained &explained);
} // namespace render

std::string json_text(const Judged &judged, const std::vector<std::string> &notes = {});
/// One of a list, without the list's brackets.
std::string json_text(const JudgedOrNot &one, const std::vector<std::string> &notes = {});
/// As one line, its end included; `number` is the line's own.
std::string json_line(std::size_t number, const Streamed &one);
std::string json_text(const Explained &explained, const std::vector<std::string> &notes = {});
/// The proof is always whole in JSON.
template <class Result>
std::string json_text(const InFull<Result> &result, const std::vector<std::string> &notes = {}) {
    return json_text(result.of, notes);
}
std::string json_text(const Learner &learner, const std::vector<std::string> &notes = {});
std::string json_text(const GradedMany &done, const std::vector<std::string> &notes = {});
std::string json_text(const Graded &graded, const std::vector<std::string> &notes = {});

} // namespace beadbook
