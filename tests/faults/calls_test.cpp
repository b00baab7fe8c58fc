// One system call of a command fails, each in turn: the command is on record whole or not at all, and says
// which.
#include "catch.hpp"
#include "faults/child.hpp"

#include <cerrno>
#include <csignal>

using namespace beadbook::test;

namespace {

struct Entering {
    std::vector<std::string> words;
    std::int64_t entries; ///< that it adds
};
const std::vector<Entering> commands{
    {{"register", "T-3", "--thickness", "0.065in"}, 1},
    {{"exam", "T-2", "MT", "--examiner", "A. Field", "--level", "II"}, 1},
    {{"log", "T-1", "gas pore 0.03 at 2", "gas pore 0.03 at 3", "gas pore 0.03 at 4"}, 3},
    {{"judge", "T-2"}, 1},
    {{"remark", "T-1", "one more"}, 1},
};

std::map<std::string, std::string> shim() {
    std::string sanitizer = "verify_asan_link_order=0";
    if (const char *set = std::getenv("ASAN_OPTIONS")) sanitizer += std::string(":") + set;
    return {{"LD_PRELOAD", BEADBOOK_FAULT_SHIM}, {"ASAN_OPTIONS", sanitizer}};
}

std::size_t calls_of(const Template &start, const Entering &command) {
    const TemporaryFolder folder;
    start.copy_to(folder.file("b.db"));
    auto environment = shim();
    environment["BEADBOOK_FAULT_COUNT"] = folder.file("count");
    const Ended ended = run({command.words, folder.file("b.db"), environment});
    INFO(ended.err);
    REQUIRE(says_stored(ended));
    REQUIRE(sound_entries(folder.file("b.db")) == start.entries + command.entries);
    return std::stoul(read_file(folder.file("count")));
}

} // namespace

TEST_CASE("whichever system call fails, a command is on record whole or not at all, and says which",
          "[faults][long]") {
    const Template start;
    const TemporaryFolder pictures;
    write_file(pictures.file("a.jpg"), "\xff\xd8\xff" + std::string(100'000, 'x')); // of many pages
    auto all = commands;
    all.push_back({{"photo", "T-1", pictures.file("a.jpg"), "--find", "1"}, 1});
    for (const auto &command : all) {
        const std::size_t calls = calls_of(start, command);
        REQUIRE(calls > 20); // else the shim does not see what the program does
        for (const auto &how :
             {std::to_string(EIO), std::to_string(ENOSPC), std::string("short"), std::string("kill")})
            for (const std::size_t n : spread(calls, faults_wanted(6))) {
                const TemporaryFolder folder;
                const std::string book = folder.file("b.db");
                start.copy_to(book);
                auto environment = shim();
                environment["BEADBOOK_FAULT_AT"] = std::to_string(n + 1);
                environment["BEADBOOK_FAULT_HOW"] = how;
                const Ended ended = run({command.words, book, environment});
                INFO(command.words.front()
                     << ", call " << n + 1 << " of " << calls << ", " << how << ": ended with " << ended.code
                     << ", signal " << ended.signal << ": " << ended.err);
                if (how == "kill")
                    CHECK((ended.signal == SIGKILL || says_stored(ended)));
                else
                    CHECK(ended.signal == 0);
                const std::int64_t added = sound_entries(book) - start.entries;
                CHECK((added == 0 || added == command.entries));
                if (says_stored(ended)) CHECK(added == command.entries);
                if (ended.code == 3 || ended.code == 4) CHECK(added == 0);
                // Whatever was left behind is in nobody's way.
                CHECK(run({{"remark", "T-1", "afterwards"}, book}).code == 0);
                CHECK(sound_entries(book) == start.entries + added + 1);
            }
    }
}
