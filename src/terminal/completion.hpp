#pragma once

#include <string>

namespace beadbook {

/// A script for bash, zsh or fish that completes commands, their options, the words that the help names for a
/// place, and files; made from the same table as the help. Throws UsageError: another shell.
std::string completion_for(const std::string &shell);

} // namespace beadbook
