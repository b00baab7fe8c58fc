// What people do with a record, as the bytes choose: each step is done or refused, and after it nothing is
// shown valid that a fresh judge would not accept, unless what was set aside stands beside it; lists say what
// follows.
#include "properties/history.hpp"

#include <cstdio>
#include <cstdlib>
#include <fuzzer/FuzzedDataProvider.h>

extern "C" int LLVMFuzzerTestOneInput(const unsigned char *bytes, std::size_t size) {
    using namespace beadbook::test;
    FuzzedDataProvider chance(bytes, size);
    HistoryTally tally;
    History history([&](int from, int to) { return chance.ConsumeIntegralInRange(from, to); }, tally);
    constexpr int most_steps = 60; // as the property has it
    for (int step = 0; step < most_steps && chance.remaining_bytes() > 0; ++step) {
        history.step();
        for (const auto &fault : history.faults()) {
            std::fprintf(stderr, "%s\n", fault.c_str());
            std::abort();
        }
    }
    if (!history.false_lines_now().empty()) std::abort();
    return 0;
}
