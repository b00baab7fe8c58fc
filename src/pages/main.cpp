// The program that `beadbook bench` becomes: all commands, and the pages.
#include "cli/deeds.hpp"
#include "pages/bench.hpp"
#include "terminal/process.hpp"

int main(int argc, char **argv) {
    return beadbook::run_process(beadbook::deeds(beadbook::run_bench), argc, argv);
}
