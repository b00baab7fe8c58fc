// Ways in which a bad or unknown weld might pass: each case is a text file in this folder, see README.md.
#include "catch.hpp"
#include "cli/run.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <filesystem>
#include <sstream>

using namespace beadbook;
using namespace beadbook::test;

namespace {

struct Command {
    std::vector<std::string> words;
    std::string input;
};
struct PassCase {
    std::string stops;
    int code = -1;
    std::vector<Command> commands;
};

std::vector<std::string> shell_words(const std::string &line) {
    std::vector<std::string> out;
    std::string word;
    bool quoted = false, begun = false;
    for (const char c : line) {
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

/// Files of the house are named from its top.
std::string with_source(std::string text) {
    const std::string mark = "{source}";
    for (std::size_t at; (at = text.find(mark)) != std::string::npos;)
        text.replace(at, mark.size(), BEADBOOK_SOURCE);
    return text;
}

std::string unescaped(std::string text) {
    for (std::size_t at; (at = text.find("\\n")) != std::string::npos;) text.replace(at, 2, "\n");
    return text;
}

PassCase read_case(const std::string &text) {
    PassCase out;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        if (line.empty() || line.starts_with("#")) continue;
        if (line.starts_with("stops: ")) {
            out.stops = line.substr(7);
        } else if (line.starts_with("code: ")) {
            out.code = std::stoi(line.substr(6));
        } else if (line.starts_with("< ")) {
            out.commands.back().input = unescaped(line.substr(2));
        } else {
            out.commands.push_back({shell_words(with_source(line)), ""});
        }
    }
    return out;
}

std::vector<std::filesystem::path> case_files() {
    std::vector<std::filesystem::path> out;
    for (const auto &file : std::filesystem::directory_iterator(BEADBOOK_SOURCE "/tests/passes"))
        if (file.path().extension() == ".txt") out.push_back(file.path());
    std::sort(out.begin(), out.end());
    return out;
}

void run_case(const std::filesystem::path &file) {
    const PassCase one = read_case(read_file(file.string()));
    INFO(file.filename().string());
    REQUIRE(one.code >= 0);
    REQUIRE(!one.stops.empty());
    REQUIRE(one.commands.size() >= 1);
    const Program run;
    for (std::size_t i = 0; i < one.commands.size(); ++i) {
        const auto &command = one.commands[i];
        const Run done = run(command.words, command.input);
        INFO(command.words[0] << " #" << i + 1 << "\n" << done.out << done.err);
        if (i + 1 < one.commands.size()) {
            REQUIRE((done.code == 0 || done.code == 1 || done.code == 5));
            continue;
        }
        CHECK(done.code == one.code);
        // Line ends are the renderer's.
        std::string said = done.out + " " + done.err;
        std::replace(said.begin(), said.end(), '\n', ' ');
        std::string flat;
        for (const auto word : words_of(said)) flat += (flat.empty() ? "" : " ") + std::string(word);
        CHECK(flat.find(one.stops) != std::string::npos);
    }
}

} // namespace

TEST_CASE("what must not pass does not: one file a way", "[passes]") {
    const auto files = case_files();
    CHECK(files.size() >= 80);
    for (const auto &file : files) run_case(file);
}
