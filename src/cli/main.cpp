#include "cli/command.hpp"

#include <chrono>
#include <csignal>
#include <cstdlib>
#include <ctime>
#include <iostream>
#include <unistd.h>

namespace {

std::string utc_now() {
    const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
    std::tm parts{};
    gmtime_r(&now, &parts);
    char text[32];
    std::strftime(text, sizeof text, "%Y-%m-%dT%H:%M:%SZ", &parts);
    return text;
}

std::string environment(const std::string &name) {
    const char *value = std::getenv(name.c_str());
    return value ? value : "";
}

/// Nothing to tidy up: every command is one transaction, and SQLite rolls back what was not committed.
extern "C" void interrupted(int) { std::_Exit(130); }

} // namespace

int main(int argc, char **argv) {
    std::signal(SIGINT, interrupted);
    std::signal(SIGPIPE, SIG_IGN); // a closed pipe shows as a failed write
    std::ios::sync_with_stdio(false);
    const bool colour =
        isatty(STDOUT_FILENO) != 0 && environment("NO_COLOR").empty() && environment("TERM") != "dumb";
    const auto today = [] { return beadbook::local_day(std::time(nullptr)); };
    beadbook::Session session{std::cin, std::cout, std::cerr, isatty(STDIN_FILENO) != 0,
                              colour,   utc_now,   today,     environment};
    return beadbook::run_program({argv + 1, argv + argc}, session);
}
