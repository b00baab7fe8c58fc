#pragma once

#include "cli/command.hpp"

namespace beadbook {

/// The commands under the headings of the people they are for.
std::string program_help();
/// One command: words, example, what more there is to say, options.
std::string command_help(const Command &command);

} // namespace beadbook
