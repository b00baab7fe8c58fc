#pragma once

#include <string>

namespace beadbook::test {

/// What keeps a command's JSON from being as src/render/schemas/COMMAND.json describes it, a key that it does
/// not describe too; empty if nothing does, or if no validator was there when the tests were built.
std::string schema_faults(const std::string &command, const std::string &json);

} // namespace beadbook::test
