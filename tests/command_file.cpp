#include "command_file.hpp"

#include "catch.hpp"

#include <algorithm>

namespace beadbook::test {
namespace {

std::string replaced(std::string text, const std::string &mark, const std::string &by) {
    for (std::size_t at = 0; (at = text.find(mark, at)) != std::string::npos; at += by.size())
        text.replace(at, mark.size(), by);
    return text;
}

} // namespace

std::vector<std::string> shell_words(const std::string &line) {
    std::vector<std::string> out;
    std::string word;
    bool quoted = false, begun = false;
    for (const char c : replaced(line, "{source}", BEADBOOK_SOURCE)) {
        if (c == '"') {
            quoted = !quoted;
            begun = true;
        } else if (c == ' ' && !quoted) {
            if (begun) out.push_back(word);
            word.clear();
            begun = false;
        } else {
            word += c;
            begun = true;
        }
    }
    if (begun) out.push_back(word);
    return out;
}

std::string input_text(const std::string &line) { return replaced(line, "\\n", "\n"); }

std::vector<std::filesystem::path> command_files(const std::string &folder) {
    std::vector<std::filesystem::path> out;
    for (const auto &file : std::filesystem::directory_iterator(BEADBOOK_SOURCE "/tests/" + folder))
        if (file.path().extension() == ".txt") out.push_back(file.path());
    std::sort(out.begin(), out.end());
    return out;
}

Run run_commands(const Program &run, const std::vector<Command> &commands) {
    REQUIRE(!commands.empty());
    for (std::size_t i = 0; i + 1 < commands.size(); ++i) {
        const Run done = run(commands[i].words, commands[i].input);
        INFO(commands[i].words[0] << " #" << i + 1 << "\n" << done.out << done.err);
        REQUIRE((done.code == 0 || done.code == 1 || done.code == 5));
    }
    return run(commands.back().words, commands.back().input);
}

} // namespace beadbook::test
