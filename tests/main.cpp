#define CATCH_CONFIG_RUNNER
#include "catch.hpp"

#include <cstdlib>
#include <string>

int main(int argc, char **argv) {
    // Programs that tests start by the thousand do not look for leaks as they end, which is half of a start
    // under the sanitizers: the same commands run within this process, which does.
    const char *asked = std::getenv("ASAN_OPTIONS");
    setenv("ASAN_OPTIONS", (std::string(asked ? asked : "") + ":detect_leaks=0").c_str(), 1);
    return Catch::Session().run(argc, argv);
}
