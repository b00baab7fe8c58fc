#include "run.hpp"

#include "catch.hpp"
#include "cli/deeds.hpp"
#include "pages/bench.hpp"
#include "still_session.hpp"

#include <sstream>

namespace beadbook::test {

Run Program::operator()(const std::vector<std::string> &words, const std::string &input,
                        bool terminal) const {
    std::istringstream in(input);
    std::ostringstream out, err;
    Session session = still_session(in, out, err, terminal, [this](const std::string &name) {
        return name == "BEADBOOK_BOOK"       ? book()
               : name == "BEADBOOK_USER"     ? std::string("tester")
               : name == "BEADBOOK_SETTINGS" ? settings()
                                             : std::string();
    });
    session.until_stopped = [](const std::string &) {}; // a server stops at once
    Run run;
    run.code = run_words(deeds(run_bench), words, session);
    run.out = out.str();
    run.err = err.str();
    return run;
}

std::string Program::ok(const std::vector<std::string> &words, const std::string &input) const {
    const Run run = (*this)(words, input);
    INFO(run.err);
    REQUIRE(run.code == 0);
    return run.out;
}

std::string flat(const std::string &text) {
    std::string out;
    for (const char c : text) {
        const bool blank = c == ' ' || c == '\n';
        if (!blank || (!out.empty() && out.back() != ' ')) out += blank ? ' ' : c;
    }
    return out;
}

} // namespace beadbook::test
