// Ways in which a bad or unknown weld might pass: each case is a text file in this folder, see README.md.
#include "catch.hpp"
#include "command_file.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <sstream>

using namespace beadbook;
using namespace beadbook::test;

namespace {

struct PassCase {
    std::string stops;
    int code = -1;
    std::vector<Command> commands;
};

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
            out.commands.back().input = input_text(line.substr(2));
        } else {
            out.commands.push_back({shell_words(line), ""});
        }
    }
    return out;
}

void run_case(const std::filesystem::path &file) {
    const PassCase one = read_case(read_file(file.string()));
    INFO(file.filename().string());
    REQUIRE(one.code >= 0);
    REQUIRE(!one.stops.empty());
    const Program run;
    const Run done = run_commands(run, one.commands);
    INFO(one.commands.back().words[0] << "\n" << done.out << done.err);
    CHECK(done.code == one.code);
    // Line ends are the renderer's.
    std::string said = done.out + " " + done.err;
    std::replace(said.begin(), said.end(), '\n', ' ');
    std::string flat;
    for (const auto word : words_of(said)) flat += (flat.empty() ? "" : " ") + std::string(word);
    CHECK(flat.find(one.stops) != std::string::npos);
}

} // namespace

TEMPLATE_TEST_CASE_SIG("what must not pass does not: one file a way, every eighth", "[passes][long]",
                       ((std::size_t Nth), Nth), 0, 1, 2, 3, 4, 5, 6, 7) {
    const auto files = command_files("passes");
    CHECK(files.size() >= 80);
    for (std::size_t n = Nth; n < files.size(); n += 8) run_case(files[n]);
}
