// Several writers and readers at once: all that was acknowledged is there, and no reader sees half of it.
#include "catch.hpp"
#include "faults/child.hpp"

#include <atomic>
#include <sys/wait.h>
#include <thread>

using namespace beadbook::test;

TEST_CASE("writers and readers at the same record wait for each other and lose nothing", "[faults]") {
    const Template start;
    const TemporaryFolder folder;
    const std::string book = folder.file("b.db");
    start.copy_to(book);
    constexpr int writers = 3, times = 8;
    // Catch2's assertions are not for threads: each collects, and all is looked at in the end.
    std::atomic<int> stored{0}, busy{0}, other{0}, unsound{0}, reads{0};
    std::atomic<bool> writing{true};
    const auto write = [&](int who) {
        for (int n = 0; n < times; ++n) {
            const Ended ended = run({{"remark", "T-1", std::to_string(who) + "." + std::to_string(n)}, book});
            (ended.code == 0 ? stored : ended.code == 4 ? busy : other)++;
        }
    };
    const auto read = [&] {
        while (writing) {
            const Ended verified = run({{"verify"}, book}), shown = run({{"show", "T-1"}, book});
            const bool waited = verified.err.find("another program") != std::string::npos;
            if ((verified.code != 0 && !waited) || (shown.code != 0 && shown.code != 4)) ++unsound;
            ++reads;
        }
    };
    std::vector<std::thread> all;
    std::thread reader(read);
    for (int who = 0; who < writers; ++who) all.emplace_back(write, who);
    for (auto &one : all) one.join();
    writing = false;
    reader.join();
    CHECK(other == 0);
    CHECK(unsound == 0);
    CHECK(reads > 0);
    CHECK(stored + busy == writers * times);
    CHECK(stored > 0);
    CHECK(sound_entries(book) == start.entries + stored);
}
