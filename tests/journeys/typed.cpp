#include "typed.hpp"

#include <cstdio>
#include <fstream>
#include <sstream>
#include <sys/wait.h>

namespace beadbook::test {

std::size_t TypedCommand::keys() const {
    std::size_t out = line.size() + 1;
    for (const auto &one : input) out += one.size() + 1;
    return input.empty() ? out : out + 1;
}

std::vector<TypedCommand> typed_in(const std::string &text) {
    std::vector<TypedCommand> out;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        if (line.starts_with("# ") || line == "^D" || line.empty()) continue;
        const bool command =
            line.size() > 2 && line[1] == ' ' && (line[0] == '%' || line[0] == '$' || line[0] == '>');
        if (command)
            out.push_back({line.substr(2), {}, line[0] != '%', line[0] == '>'});
        else
            out.back().input.push_back(line);
    }
    return out;
}

TypingCost counted(const std::vector<TypedCommand> &all) {
    TypingCost out;
    for (const auto &one : all)
        if (one.counted) {
            ++out.commands;
            out.keys += one.keys();
        }
    return out;
}

Typing type(const TypedCommand &command, const std::string &folder, const std::string &program) {
    {
        std::ofstream call(folder + "/call.sh");
        call << "export BEADBOOK_BOOK=" << folder
             << "/book.db BEADBOOK_USER='A. Field' BEADBOOK_SETTINGS=" << folder
             << "/none.yaml\nbeadbook() { " << program << " \"$@\"; }\ncd " << folder << " || exit 9\n"
             << command.line << "\n";
        std::ofstream input(folder + "/input.txt");
        for (const auto &line : command.input) input << line << "\n";
    }
    const std::string bash = "bash " + folder + "/call.sh";
    const std::string run = (command.on_terminal ? "script -qec '" + bash + "' /dev/null" : bash) + " <" +
                            folder + "/input.txt 2>&1";
    Typing out;
    FILE *pipe = popen(run.c_str(), "r");
    if (!pipe) return {-1, "it cannot be run"};
    char part[4096];
    for (std::size_t n; (n = std::fread(part, 1, sizeof part, pipe)) > 0;) out.out.append(part, n);
    const int status = pclose(pipe);
    out.code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    return out;
}

} // namespace beadbook::test
