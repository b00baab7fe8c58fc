// README.md as a newcomer takes it: each block of commands is run in its order, in a fresh folder, by the
// program that is shipped; where it shows what is printed, that is what comes out.
#include "catch.hpp"
#include "measure/day.hpp"
#include "measure/text.hpp"
#include "temporary.hpp"

#include <cstdio>
#include <ctime>
#include <filesystem>
#include <regex>
#include <sstream>
#include <sys/wait.h>

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// Lines that stand four blanks in, with the line of text before them.
struct Block {
    std::string before;
    std::vector<std::string> lines;
};

std::vector<Block> blocks_of(const std::string &markdown) {
    std::vector<Block> out;
    std::istringstream lines(markdown);
    std::string text;
    bool inside = false;
    for (std::string line; std::getline(lines, line);) {
        if (line.starts_with("    ")) {
            if (!inside) out.push_back({text, {}});
            inside = true;
            out.back().lines.push_back(line.substr(4));
        } else {
            inside = false;
            if (!trimmed(line).empty()) text = line;
        }
    }
    return out;
}

/// README speaks as on this day: its dates are moved so that it is today.
std::string as_of_today(const std::string &text) {
    const auto moved = local_day(std::time(nullptr)) - parse_day("2026-11-26");
    static const std::regex day(R"(\b\d{4}-\d{2}-\d{2}\b)");
    std::string out;
    auto from = text.cbegin();
    for (std::sregex_iterator at(text.begin(), text.end(), day), end; at != end; ++at) {
        out.append(from, (*at)[0].first);
        out += print(parse_day(at->str()) + moved);
        from = (*at)[0].second;
    }
    return out.append(from, text.cend());
}

/// Any day is as good as another in what is printed: some are counted from today by months.
std::string without_days(const std::string &text) {
    static const std::regex day(R"(\b\d{4}-\d{2}-\d{2}\b)");
    return std::regex_replace(text, day, "DAY");
}

bool is_commands(const Block &block) { return block.lines.front().starts_with("beadbook "); }

/// Calls that go on in the next line are one.
std::vector<std::string> calls_of(const Block &block) {
    std::vector<std::string> out;
    bool goes_on = false;
    for (const auto &line : block.lines) {
        if (goes_on)
            out.back() += line;
        else
            out.push_back(line);
        goes_on = out.back().ends_with('\\');
        if (goes_on) out.back().pop_back();
    }
    return out;
}

/// Whether the text is these lines; a line of three dots is any lines.
bool reads(const std::string &printed, const std::vector<std::string> &lines) {
    const std::string text = without_days(printed);
    std::size_t at = 0;
    bool anywhere = false;
    for (const auto &line : lines) {
        if (line == "...") {
            anywhere = true;
            continue;
        }
        const std::string whole = without_days(line) + "\n";
        const std::size_t found = text.find(whole, at);
        if (found == std::string::npos || (!anywhere && found != at) ||
            (found > 0 && text[found - 1] != '\n'))
            return false;
        at = found + whole.size();
        anywhere = false;
    }
    return anywhere || at == text.size();
}

/// A folder with a record of its own, and a stand-in for the converter to PDF, which a machine need not have.
class Newcomer {
public:
    Newcomer() {
        std::filesystem::create_directory(folder_.file("bin"));
        write_file(folder_.file("bin/weasyprint"), "#!/bin/sh\nprintf '%%PDF-1.7\\n' >\"$2\"\n");
        std::filesystem::permissions(folder_.file("bin/weasyprint"), std::filesystem::perms::owner_all);
        std::filesystem::create_symlink(BEADBOOK_PROGRAM, folder_.file("bin/beadbook"));
    }
    void write(const std::string &name, const std::string &text) { write_file(folder_.file(name), text); }

    /// Its exit code and what it printed; without errors, unless it fails.
    std::pair<int, std::string> run(const std::string &call) const {
        write_file(folder_.file("call.sh"),
                   "export PATH=\"" + folder_.file("bin") +
                       ":$PATH\" BEADBOOK_BOOK=" + folder_.file("book.db") +
                       " BEADBOOK_USER='R. Quay' BEADBOOK_SETTINGS=" + folder_.file("none.yaml") + "\ncd " +
                       folder_.file("") + " || exit 9\n" + call + "\n");
        const std::string errors = folder_.file("errors");
        FILE *pipe = popen(("bash " + folder_.file("call.sh") + " 2>" + errors + " </dev/null").c_str(), "r");
        REQUIRE(pipe);
        std::string out;
        char part[4096];
        for (std::size_t n; (n = std::fread(part, 1, sizeof part, pipe)) > 0;) out.append(part, n);
        const int status = pclose(pipe);
        const int code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
        return {code, code == 0 || code == 1 || code > 4 ? out : out + read_file(errors)};
    }

private:
    TemporaryFolder folder_;
};

} // namespace

TEST_CASE("the journeys of README run in order as they are printed, and print what it shows",
          "[journeys][long]") {
    const auto blocks = blocks_of(as_of_today(read_file(BEADBOOK_SOURCE "/README.md")));
    Newcomer newcomer;
    newcomer.write("crater.jpg", "\xff\xd8\xff"); // what no README can show
    static const std::regex of_file("^where (\\S+) is, say,$"), of_output("^The last of these prints$");
    std::smatch name;
    std::size_t files = 0, calls = 0, shown = 0;
    for (const auto &block : blocks)
        if (std::regex_match(block.before, name, of_file)) {
            newcomer.write(name[1], joined(block.lines, "\n") + "\n");
            ++files;
        }
    std::string last;
    for (const auto &block : blocks) {
        if (std::regex_match(block.before, of_output)) {
            INFO(last);
            CHECK(reads(last, block.lines));
            ++shown;
        }
        if (!is_commands(block)) continue;
        for (const auto &call : calls_of(block)) {
            INFO(call);
            REQUIRE(call.starts_with("beadbook "));
            // It serves pages until it is stopped (tests/web).
            if (call.starts_with("beadbook bench")) continue;
            const auto [code, out] = newcomer.run(call);
            INFO(out);
            // What a coupon or a welder comes out as is no failure: rejected, cannot say, not allowed.
            CHECK((code == 0 || code == 1 || code == 5 || code == 6));
            last = out;
            ++calls;
        }
    }
    CHECK(files >= 3);
    CHECK(calls >= 50);
    CHECK(shown >= 3);
}

TEST_CASE("what a README shows is held against what comes out line by line", "[journeys]") {
    CHECK(reads("a\nb\nc\n", {"a", "b", "c"}));
    CHECK(reads("a\nb\nc\n", {"a", "..."}));
    CHECK(reads("a\nb\nc\n", {"...", "c"}));
    CHECK_FALSE(reads("a\nb\nc\n", {"a", "b"}));
    CHECK_FALSE(reads("a\nb\nc\n", {"a", "c"}));
    CHECK_FALSE(reads("a\nxb\n", {"a", "...", "b"}));
    CHECK_FALSE(reads("a\n", {"a", "b"}));
}
