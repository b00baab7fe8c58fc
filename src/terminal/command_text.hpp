#pragma once

#include "measure/refusal.hpp"
#include "terminal/command.hpp"

#include <string>
#include <vector>

namespace beadbook {

/// --sure, --exam N or --why "...", as it is an option of the command, or else of any; "found=none" with that
/// value, "condition:light" as the condition of that name.
std::string option_text(const std::string &field, const Command *of);
/// As it would be typed, in quotes where it is several words.
std::string word_text(const std::string &word);
/// beadbook exam T-1 VT --replaces 1 --level "..." --why "...": what mends something, as it would be typed.
std::string command_text(const Remedy &remedy);
/// The commands in quotes, with what stands between them; empty where nothing mends it.
std::string commands_text(const std::vector<Remedy> &remedies, const std::string &between);

} // namespace beadbook
