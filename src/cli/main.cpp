#include "cli/deeds.hpp"
#include "operations/program_beside.hpp"
#include "terminal/process.hpp"

#include <cerrno>
#include <cstring>
#include <unistd.h>

namespace beadbook {
namespace {

/// What this process was started with, for the one that takes its place.
char **given_words = nullptr;

/// The pages are a program of their own: what they alone need would be most of the start of each command.
ExitCode become_pages(Call &) {
    const std::string program = program_beside("beadbook-pages");
    if (program.empty())
        throw StoreError("the bench is missing: there is no program beadbook-pages beside beadbook; "
                         "install all of it");
    execv(program.c_str(), given_words);
    throw StoreError("the bench could not be started: " + program + ": " + std::strerror(errno));
}

} // namespace
} // namespace beadbook

int main(int argc, char **argv) {
    beadbook::given_words = argv;
    return beadbook::run_process(beadbook::deeds(beadbook::become_pages), argc, argv);
}
