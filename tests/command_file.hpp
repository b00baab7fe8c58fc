#pragma once

#include "cli/run.hpp"

#include <filesystem>
#include <string>
#include <vector>

/// Small text files of beadbook's words, as tests/passes and tests/messages hold them, one case a file.
namespace beadbook::test {

struct Command {
    std::vector<std::string> words;
    std::string input;
};

/// The words of a line as a shell parts them: blanks, and double quotes. `{source}` is the top of the house.
std::vector<std::string> shell_words(const std::string &line);

/// What follows "< ": text on standard input, with \n for line ends.
std::string input_text(const std::string &line);

/// All .txt files of a folder of tests, by name.
std::vector<std::filesystem::path> command_files(const std::string &folder);

/// Runs all commands but the last, which must end with 0, 1 or 5, and gives what the last one did.
Run run_commands(const Program &run, const std::vector<Command> &commands);

} // namespace beadbook::test
