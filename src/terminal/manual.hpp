#pragma once

#include "terminal/command.hpp"

namespace beadbook {

/// Pages of section 1, in the language of man; made from the same table as the help.
std::string program_manual();
std::string command_manual(const Command &command);

} // namespace beadbook
