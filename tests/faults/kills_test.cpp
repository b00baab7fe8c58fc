// The program is killed at random moments: what it had acknowledged is there, and nothing is there by half.
#include "catch.hpp"
#include "faults/child.hpp"

#include <chrono>
#include <random>

using namespace beadbook::test;

TEST_CASE("killed at any moment, a command is on record whole or not at all", "[faults]") {
    const Template start;
    const TemporaryFolder folder;
    const std::string book = folder.file("b.db");
    start.copy_to(book);
    const Child three{{"log", "T-1", "gas pore 0.03 at 2", "gas pore 0.03 at 3", "gas pore 0.03 at 4"}, book};
    const auto begin = std::chrono::steady_clock::now();
    REQUIRE(run(three).code == 0);
    const auto whole =
        std::chrono::duration_cast<std::chrono::microseconds>(std::chrono::steady_clock::now() - begin);
    std::int64_t entries = sound_entries(book);
    REQUIRE(entries == start.entries + 3);
    std::mt19937 random(12'011); // NOLINT: the same moments each time, as far as a machine has the same
    const std::size_t times = faults_wanted(40) > 10'000 ? 10'000 : faults_wanted(40);
    std::size_t killed = 0;
    for (std::size_t n = 0; n < times; ++n) {
        Child one = three;
        one.kill_after_us = static_cast<int>(random() % static_cast<unsigned>(whole.count() + 1));
        const Ended ended = run(one);
        killed += ended.signal != 0 ? 1 : 0;
        const std::int64_t now = sound_entries(book);
        INFO("after " << one.kill_after_us << " of " << whole.count() << " us");
        REQUIRE((now == entries || now == entries + 3));
        if (ended.code == 0) REQUIRE(now == entries + 3);
        entries = now;
    }
    CHECK(killed > 0);
}
