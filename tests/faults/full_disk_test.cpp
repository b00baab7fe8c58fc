// A disk that is full: nothing is half stored, and the record is as it was.
#include "catch.hpp"
#include "faults/child.hpp"
#include "operations/coupons.hpp"
#include "operations/desk.hpp"

#include <csignal>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// Remarks until the record takes no more; what the refusal said.
std::string fill(const std::string &book, std::int64_t &taken) {
    for (;;) {
        const Ended ended = run({{"remark", "T-1", std::string(1900, 'x')}, book});
        if (ended.code == 0 && ++taken > 1000) return "never full";
        if (ended.code != 0) return std::to_string(ended.code) + ": " + ended.err;
    }
}

} // namespace

TEST_CASE("a full disk stores nothing by half, and says so", "[faults]") {
    const Template start;
    const TemporaryFolder folder;
    const std::string disk = folder.file("");
    if (mount("tmpfs", disk.c_str(), "tmpfs", 0, "size=256k") != 0) {
        WARN("skipped: only root can make a small disk");
        return;
    }
    struct Unmounted {
        ~Unmounted() { umount2(disk.c_str(), MNT_DETACH); }
        const std::string &disk;
    } const unmounted{disk};
    const std::string book = folder.file("b.db");
    start.copy_to(book);
    std::int64_t taken = 0;
    const std::string said = fill(book, taken);
    INFO(said);
    CHECK(said.starts_with("4: "));
    CHECK(said.find("full") != std::string::npos);
    CHECK(taken > 0);
    CHECK(sound_entries(book) == start.entries + taken);
    const Ended copy = run({{"backup", folder.file("copy.db")}, book});
    CHECK(copy.code == 4);
    const Ended out = run({{"export", "json", "--output", folder.file("all.json")}, book});
    CHECK((out.code == 4 || out.code == 0)); // what little room is left may do
    for (const auto &one : std::filesystem::directory_iterator(disk)) {
        INFO(one.path());
        CHECK((one.path().filename() == "b.db" || (out.code == 0 && one.path().filename() == "all.json")));
    }
}

TEST_CASE("output that cannot be written after something was stored has an exit code of its own",
          "[faults]") {
    const Template start;
    const TemporaryFolder folder;
    const std::string book = folder.file("b.db");
    start.copy_to(book);
    const Ended stored = run({{"remark", "T-1", "x"}, book, {}, "/dev/full"});
    CHECK(stored.code == 7);
    CHECK_THAT(stored.err, says("stored, but the output could not be written; look at the record"));
    CHECK(sound_entries(book) == start.entries + 1);
    const Ended looked = run({{"show", "T-1"}, book, {}, "/dev/full"});
    CHECK(looked.code == 4);
    const Ended tried = run({{"remark", "T-1", "x", "--dry-run"}, book, {}, "/dev/full"});
    CHECK(tried.code == 4);
    CHECK(sound_entries(book) == start.entries + 1);
}
