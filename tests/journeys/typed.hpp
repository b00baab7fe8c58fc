#pragma once

#include <string>
#include <vector>

namespace beadbook::test {

/// What somebody types, in a file of typed/:
///
///     # a comment
///     % beadbook person ...      done before: it is run, and not counted
///     $ beadbook judge --all     a command; the lines below it are typed to it, until ^D
///     > beadbook log T-1         the same on a terminal
struct TypedCommand {
    std::string line;
    std::vector<std::string> input;
    bool counted = true, on_terminal = false;

    /// Each letter, Enter behind each line, and Ctrl-D after the input.
    std::size_t keys() const;
};
std::vector<TypedCommand> typed_in(const std::string &text);

/// What all of them cost.
struct TypingCost {
    std::size_t commands = 0, keys = 0;
};
TypingCost counted(const std::vector<TypedCommand> &all);

/// Runs it in a folder, by the program that lies at `program`, with the record book.db there. Its exit code,
/// and all that it printed.
struct Typing {
    int code = 0;
    std::string out;
};
Typing type(const TypedCommand &command, const std::string &folder, const std::string &program);

} // namespace beadbook::test
