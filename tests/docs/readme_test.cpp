// What the READMEs show must be true: every YAML example of the language loads, every command that is shown
// exists.
#include "case.hpp"
#include "catch.hpp"
#include "cli/deeds.hpp"
#include "measure/text.hpp"
#include "qualify/work.hpp"
#include "technique/practice.hpp"
#include "temporary.hpp"
#include "terminal/command.hpp"

#include <algorithm>
#include <filesystem>
#include <map>
#include <sstream>

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::vector<std::string> yaml_blocks(const std::string &markdown) {
    std::vector<std::string> out;
    std::istringstream lines(markdown);
    bool inside = false;
    for (std::string line; std::getline(lines, line);) {
        if (line == "```yaml") {
            inside = true;
            out.emplace_back();
        } else if (line == "```") {
            inside = false;
        } else if (inside) {
            out.back() += line + "\n";
        }
    }
    return out;
}

} // namespace

TEST_CASE("every example of the criteria language loads without a warning") {
    const auto blocks = yaml_blocks(read_file(BEADBOOK_SOURCE "/criteria/README.md"));
    CHECK(blocks.size() >= 8);
    for (const auto &block : blocks) {
        std::string text = block.starts_with("set:") ? block : head() + block;
        if (text.find("\nrules:") == std::string::npos)
            text += "rules:\n  - {id: r, types: porosity, exams: RT, allowed: none, clause: c, standing: "
                    "{house: x}}\n";
        const Loaded loaded = load_criteria(text);
        INFO(block << (loaded.issues.empty() ? "" : print(loaded.issues.front(), "README", text)));
        CHECK(loaded.set != nullptr);
    }
}

TEST_CASE("every example of rules for welders and of a work file loads") {
    const auto blocks = yaml_blocks(read_file(BEADBOOK_SOURCE "/criteria/welder/README.md"));
    REQUIRE(blocks.size() == 2);
    const LoadedRules rules = load_range_rules(blocks[0]);
    INFO((rules.issues.empty() ? "" : print(rules.issues.front(), "README", blocks[0])));
    CHECK(rules.rules);
    const LoadedWork work = load_work(blocks[1], "", shipped_range_rules);
    INFO((work.issues.empty() ? "" : print(work.issues.front(), "README", blocks[1])));
    CHECK(work.work);
}

TEST_CASE("the example of a practice loads") {
    const auto blocks = yaml_blocks(read_file(BEADBOOK_SOURCE "/criteria/technique/README.md"));
    REQUIRE(blocks.size() == 1);
    const LoadedPractice loaded = load_practice(blocks[0]);
    INFO((loaded.issues.empty() ? "" : print(loaded.issues.front(), "README", blocks[0])));
    CHECK(loaded.practice);
}

TEST_CASE("no two headers define a type of the same name") {
    // The compiler would not tell, and the linker would merge their templates.
    std::map<std::string, std::string> home;
    std::size_t seen = 0;
    for (const auto &file : std::filesystem::recursive_directory_iterator(BEADBOOK_SOURCE "/src")) {
        if (file.path().extension() != ".hpp") continue;
        std::istringstream lines(read_file(file.path()));
        for (std::string line; std::getline(lines, line);) {
            const auto words = words_of(line);
            if (line.starts_with(" ") || words.size() < 3 || words.back() != "{") continue;
            if (words[0] != "struct" && words[0] != "class" && words[0] != "enum") continue;
            const std::string name(words[words[1] == "class" ? 2 : 1]);
            const auto [at, fresh] = home.emplace(name, file.path());
            INFO(name << " stands in " << at->second << " and in " << file.path());
            CHECK(fresh);
            ++seen;
        }
    }
    CHECK(seen > 80);
}

TEST_CASE("every command and option that the READMEs show exists") {
    for (const char *file :
         {"/README.md", "/records/README.md", "/criteria/README.md", "/criteria/welder/README.md",
          "/criteria/technique/README.md", "/DEVELOPERS.md"}) {
        std::string text = read_file(std::string(BEADBOOK_SOURCE) + file);
        // A call that goes on in the next line is one line.
        for (std::size_t at; (at = text.find("\\\n")) != std::string::npos;) text.replace(at, 2, " ");
        std::size_t calls = 0;
        std::istringstream lines(text);
        for (std::string line; std::getline(lines, line);)
            for (const std::string begin : {"`beadbook ", "    beadbook "}) {
                const std::size_t at = line.find(begin);
                if (at == std::string::npos || (begin[0] == ' ' && at != 0)) continue;
                // What it is piped into is not ours.
                const std::size_t end = std::min(line.find('`', at + 1), line.find(" | ", at));
                const std::string call = line.substr(at + begin.size(), end - at - begin.size());
                const auto words = words_of(call);
                INFO(file << ": " << line);
                REQUIRE_FALSE(words.empty());
                const Command *command = command_called(std::string(words[0]));
                REQUIRE(command);
                const auto options = command->options;
                ++calls;
                for (const auto word : words)
                    if (word.starts_with("--"))
                        CHECK(std::any_of(options.begin(), options.end(),
                                          [&](const Option &o) { return "--" + o.name == word; }));
            }
        INFO(file);
        CHECK(calls > 0);
    }
}
