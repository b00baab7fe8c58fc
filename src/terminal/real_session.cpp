#include "terminal/real_session.hpp"

#include <chrono>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <iostream>
#include <poll.h>
#include <spawn.h>
#include <sys/ioctl.h>
#include <unistd.h>

namespace beadbook {
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

/// Of the terminal; all 0 where output goes elsewhere.
winsize terminal() {
    winsize size{};
    if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0) return {};
    return size;
}

/// Through PAGER, else less or more, which keep colours and end by themselves where a page is enough.
bool page(const std::string &text) {
    std::string pager = environment("PAGER");
    if (pager == "cat") return false;
    if (pager.empty())
        pager = "if command -v less >/dev/null; then LESS=${LESS-FRX} exec less; fi; "
                "if command -v more >/dev/null; then exec more; fi; exit 127";
    FILE *to = popen(pager.c_str(), "w");
    if (!to) return false;
    const auto before = std::signal(SIGINT, SIG_IGN); // it is the pager's while that runs
    std::fwrite(text.data(), 1, text.size(), to);     // whoever leaves it early has seen enough
    const int ended = pclose(to);
    std::signal(SIGINT, before);
    return ended != 127 << 8; // of the shell: there is no such program
}

/// Whether nobody reads the output any more: `beadbook coupons | head`.
bool pipe_closed() {
    pollfd out{STDOUT_FILENO, POLLOUT, 0};
    return poll(&out, 1, 0) == 1 && (out.revents & POLLERR) != 0;
}

/// Shows a page in the user's browser, if there is a screen.
void open_in_browser(const std::string &link) {
    if (environment("DISPLAY").empty() && environment("WAYLAND_DISPLAY").empty()) return;
    const char *const words[] = {"xdg-open", link.c_str(), nullptr};
    pid_t child = 0;
    posix_spawnp(&child, words[0], nullptr, nullptr, const_cast<char *const *>(words), environ);
}

} // namespace

Session real_session() {
    const bool colour =
        isatty(STDOUT_FILENO) != 0 && environment("NO_COLOR").empty() && environment("TERM") != "dumb";
    const auto today = [] { return local_day(std::time(nullptr)); };
    const winsize size = terminal();
    // Within what can be read; of a file 100.
    const std::size_t width = size.ws_col == 0 ? 100 : std::clamp<std::size_t>(size.ws_col, 40, 160);
    Session session{std::cin,        std::cout,   std::cerr, isatty(STDIN_FILENO) != 0,
                    colour,          utc_now,     today,     environment,
                    width,           pipe_closed, false,     {},
                    open_in_browser, size.ws_row, page};
    if (isatty(STDERR_FILENO) != 0) session.many = 2000;
    return session;
}

} // namespace beadbook
