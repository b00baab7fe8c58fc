#pragma once

#include "cli/call.hpp"

#include <string_view>

namespace beadbook {

/// Under whose heading the help lists a command.
enum class For { technician, instructor, welder, keeper };

/// One command. The tables of these drive dispatch, help, the mending of misspelt names, and the tests.
struct Command {
    For whom;
    bool enters = false; ///< something on record; then it takes --by and --dry-run
    ExitCode (*run)(Call &) = nullptr;
    /// Lines: name and words, what it does, an example (without the program's name); then what more there is
    /// to say. `[...]` may be left out, `...` comes again, ` | ` parts several ways.
    std::string help;
    std::vector<Option> options; ///< of its own; --book, --json, --help and more come with every command

    std::string line(std::size_t number) const;
    std::string name() const;
    std::string arguments() const;
    std::string summary() const { return line(1); }
    std::string example() const { return "beadbook " + line(2); }
    std::string details() const; ///< may be empty
    /// Its own, and those that come with it.
    std::vector<Option> all_options() const;
    /// The fewest and the most words that follow its name.
    std::size_t least() const;
    std::size_t most() const;
};

/// A command that shows something.
Command looks(For whom, ExitCode (*run)(Call &), std::string help, std::vector<Option> options = {});
/// A command that enters something on record.
Command enters(For whom, ExitCode (*run)(Call &), std::string help, std::vector<Option> options = {});

// One function a family, each in the file that is named after it.
std::vector<Command> coupon_commands();
std::vector<Command> examining_commands();
std::vector<Command> photo_commands();
std::vector<Command> judging_commands();
std::vector<Command> listing_commands();
std::vector<Command> technique_commands();
std::vector<Command> planning_commands();
std::vector<Command> welder_commands();
std::vector<Command> qualifying_commands();
std::vector<Command> standing_commands();
std::vector<Command> printing_commands();
std::vector<Command> people_commands();
std::vector<Command> catalogue_commands();
std::vector<Command> owners_copy_commands();
std::vector<Command> exchange_commands();
std::vector<Command> keeping_commands();
std::vector<Command> bench_commands();
std::vector<Command> program_commands();

/// All of them.
const std::vector<Command> &commands();
/// Null if there is none.
const Command *command_called(const std::string &name);
/// Throws UsageError with the nearest name.
const Command &command_named(const std::string &name);

/// The coupon that a call means: the one on record that it names, or one that its options describe.
CouponRecord coupon_meant(Call &call);

/// Runs the program on its words (without its own name). Never throws.
int run_program(const std::vector<std::string> &words, Session &session);

} // namespace beadbook
