// Long texts on a terminal go through a pager: at the seam, and by the program on a pseudo-terminal.
#include "catch.hpp"
#include "cli/deeds.hpp"
#include "cli/still_session.hpp"
#include "measure/text.hpp"
#include "pages/bench.hpp"
#include "temporary.hpp"

#include <cstdio>
#include <cstdlib>
#include <sstream>

using namespace beadbook;
using namespace beadbook::test;

namespace {

struct Shown {
    std::string printed, paged;
};

/// On a terminal of so many lines; `works`: whether a pager is there.
Shown on_terminal(std::size_t height, const std::vector<std::string> &words, bool works = true) {
    std::istringstream in;
    std::ostringstream out, err;
    Shown shown;
    Session session = still_session(in, out, err, true, [](const std::string &) { return std::string(); });
    session.height = height;
    session.page = [&](const std::string &text) {
        if (works) shown.paged += text;
        return works;
    };
    INFO(err.str());
    REQUIRE(run_words(deeds(run_bench), words, session) == 0);
    shown.printed = out.str();
    return shown;
}

/// What a terminal of 10 lines gets.
std::string on_pseudo_terminal(const std::string &setting, const std::string &call) {
    const TemporaryFolder folder;
    write_file(folder.file("call.sh"),
               "stty rows 10 cols 90\nexport BEADBOOK_SETTINGS=" + folder.file("none.yaml") + " " + setting +
                   "\n" BEADBOOK_PROGRAM " " + call + "\n");
    FILE *pipe = popen(("script -qec 'sh " + folder.file("call.sh") + "' /dev/null </dev/null").c_str(), "r");
    REQUIRE(pipe);
    std::string out;
    char part[4096];
    for (std::size_t n; (n = std::fread(part, 1, sizeof part, pipe)) > 0;) out.append(part, n);
    REQUIRE(pclose(pipe) == 0);
    return out;
}

} // namespace

TEST_CASE("a text that the terminal is too short for is paged, whole") {
    const std::vector<std::string> types{"criteria", "types"};
    const std::string whole = on_terminal(0, types).printed;
    CHECK_THAT(whole, says("undercut"));
    const auto lines = static_cast<std::size_t>(std::count(whole.begin(), whole.end(), '\n'));
    const Shown paged = on_terminal(lines, types); // the prompt of the shell takes a line
    CHECK(paged.paged == whole);
    CHECK(paged.printed.empty());
    CHECK(on_terminal(lines + 1, types).printed == whole);
    const Shown none = on_terminal(10, types, false);
    CHECK(none.printed == whole);
    CHECK(on_terminal(10, {"help"}).paged == on_terminal(0, {"--help"}).printed);
    CHECK(on_terminal(10, {"log", "--help"}).paged == on_terminal(0, {"help", "log"}).printed);
}

TEST_CASE("data for programs and what is to be at once is never paged") {
    CHECK(on_terminal(3, {"criteria", "types", "--json"}).paged.empty());
    CHECK_THAT(on_terminal(3, {"criteria", "types", "--json"}).printed, says("{"));
    const Shown at_once = on_terminal(3, {"criteria", "types", "--no-pager"});
    CHECK(at_once.paged.empty());
    CHECK_THAT(at_once.printed, says("undercut"));
    const Shown quiet = on_terminal(3, {"criteria", "types", "--quiet"});
    CHECK((quiet.paged.empty() && quiet.printed.empty()));
}

TEST_CASE("the program takes the pager of the environment, and prints where there is none") {
    CHECK_THAT(on_pseudo_terminal("PAGER=\"sed s/^/paged:/\"", "criteria types"), says("paged:"));
    CHECK_THAT(on_pseudo_terminal("PAGER=\"sed s/^/paged:/\"", "criteria types --no-pager"),
               says("undercut") && !says("paged:"));
    CHECK_THAT(on_pseudo_terminal("PAGER=\"sed s/^/paged:/\"", "settings"), !says("paged:")); // it is short
    for (const char *setting : {"PAGER=cat", "PAGER=/no/such/pager"})
        CHECK_THAT(on_pseudo_terminal(setting, "criteria types"), says("undercut"));
}
