#pragma once

#include "cli/run.hpp"

#include <nlohmann/json.hpp>

namespace beadbook::test {

/// Runs the command with --json, holds what it prints against its schema, and reads it. Fails the test where
/// it ends with another code.
nlohmann::json json(const Program &run, std::vector<std::string> words, int code = 0,
                    const std::string &input = "");

} // namespace beadbook::test
