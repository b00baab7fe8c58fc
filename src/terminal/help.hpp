#pragma once

#include "terminal/command.hpp"

namespace beadbook {

/// What the help and the manual call the people that commands are for.
struct Section {
    For whom;
    std::string_view text;
};
const std::vector<Section> &headings();

/// Of the program, each with its one meaning.
extern const std::string_view exit_codes;

/// The commands under the headings of the people they are for.
std::string program_help();
/// One command, in lines of at most `width`: words, example, what more there is to say, options.
std::string command_help(const Command &command, std::size_t width);

} // namespace beadbook
