#pragma once

#include "operations/reading.hpp"

#include <nlohmann/json.hpp>

/// JSON of what the check of a file found. For the renderers of JSON only.
namespace beadbook {

template <class T>
nlohmann::json check_json(const Checked<T> &checked, const char *what, std::size_t count) {
    nlohmann::json issues = nlohmann::json::array();
    for (const auto &issue : checked.issues)
        issues.push_back({{"severity", issue.severity == Severity::error ? "error" : "warning"},
                          {"line", issue.where.line},
                          {"column", issue.where.column},
                          {"path", issue.path},
                          {"text", issue.text}});
    nlohmann::json out{
        {"file", checked.name}, {"holds", checked.value != nullptr}, {"issues", std::move(issues)}};
    if (checked.value) out[what] = count;
    return out;
}

} // namespace beadbook
