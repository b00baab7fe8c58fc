#include "terminal/process.hpp"

#include "terminal/real_session.hpp"

#include <csignal>
#include <cstdlib>
#include <fcntl.h>
#include <iostream>
#include <unistd.h>

namespace beadbook {
namespace {

/// Standard input, output and errors that somebody closed: else the next file that is opened, the record or
/// an export, would get their number, and what is printed would be written into it. Read-only, so that
/// printing still fails and is told.
void keep_standard_streams() {
    for (int open = ::open("/dev/null", O_RDONLY); open >= 0; open = ::open("/dev/null", O_RDONLY))
        if (open > STDERR_FILENO) {
            close(open);
            return;
        }
}

/// Nothing to tidy up: every command is one transaction, and SQLite rolls back what was not committed.
extern "C" void interrupted(int) { std::_Exit(130); }

} // namespace

int run_process(const Deeds &deeds, int argc, char **argv) {
    keep_standard_streams();
    std::signal(SIGINT, interrupted);
    std::signal(SIGPIPE, SIG_IGN); // a closed pipe shows as a failed write
    std::ios::sync_with_stdio(false);
    Session session = real_session();
    return run_words(deeds, {argv + 1, argv + argc}, session);
}

} // namespace beadbook
