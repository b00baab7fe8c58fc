#pragma once

#include "terminal/options.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace beadbook {

/// Under whose heading the help lists a command.
enum class For : std::uint8_t { technician, instructor, welder, keeper };

/// The words of one command, as src/terminal/commands has them. They drive dispatch, help, manual,
/// completion, the mending of misspelt names, and the tests.
struct Command {
    For whom = For::technician;
    bool enters = false;         ///< something on record; then it takes --by and --dry-run
    std::string words;           ///< what is typed: its name, and what follows
    std::string summary;         ///< what it does, in a line
    std::string example;         ///< with the program's name
    std::string details;         ///< what more there is to say; may be empty
    std::vector<Option> options; ///< its own, and those that come with every command

    std::string name() const;
    std::string arguments() const;
    /// The fewest and the most words that follow its name.
    std::size_t least() const;
    std::size_t most() const;
};

/// All of them, in the order of the help.
const std::vector<Command> &commands();
/// The options that the table gives a name together: "selection". Throws std::out_of_range.
const std::vector<Option> &option_group(const std::string &name);
/// Null if there is none.
const Command *command_called(const std::string &name);
/// Throws UsageError with the nearest name.
const Command &command_named(const std::string &name);

} // namespace beadbook
