// A record that several threads, or several programs, look at while one writes.
#include "catch.hpp"
#include "operations/coupons.hpp"
#include "operations/desk.hpp"
#include "records/trouble.hpp"

#include <atomic>
#include <fcntl.h>
#include <filesystem>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

using namespace beadbook;
using namespace beadbook::test;

TEST_CASE("a record that is being made is there whole or not at all") {
    const TemporaryFolder folder;
    std::atomic<int> made = 0;
    constexpr int records = 20;
    const auto path = [&](int n) { return folder.file(std::to_string(n) + ".db"); };
    std::string seen;
    std::thread reader([&] {
        while (made < records && seen.empty()) {
            const std::string next = path(made);
            const std::string said = trouble(next, Ledger::Mode::read);
            if (said != "holds" && said.find("there is no record yet") == std::string::npos) seen = said;
        }
    });
    for (; made < records; ++made) Ledger(path(made), Ledger::Mode::create);
    reader.join();
    CHECK(seen.empty());
    CHECK(trouble(path(0), Ledger::Mode::read) == "holds");
    // And nothing is left of what it was made as.
    for (const auto &file : std::filesystem::directory_iterator(std::filesystem::path(path(0)).parent_path()))
        CHECK(file.path().extension() == ".db");
}

TEST_CASE("reading beside a write of the same program does not take its lock on the file away") {
    const TemporaryFolder folder;
    const std::string path = folder.file("b.db");
    OpenBook book(path, Ledger::Mode::create);
    book.write([](Writing &w) { register_coupon(w, {"T-1", {{"thickness", "0.065 in"}}}); });
    const Ledger::Transaction writing(book.book.ledger());
    CHECK(trouble(path, Ledger::Mode::read) == "holds"); // as a page is asked for meanwhile
    // Another program asks who holds the lock by which SQLite keeps other writers out: its file format, 2.3.
    const pid_t other = fork();
    REQUIRE(other >= 0);
    if (other == 0) {
        constexpr off_t reserved_byte = 0x40000001;
        struct flock lock {};
        lock.l_type = F_WRLCK;
        lock.l_whence = SEEK_SET;
        lock.l_start = reserved_byte;
        lock.l_len = 1;
        const int file = open(path.c_str(), O_RDWR | O_CLOEXEC);
        _exit(file >= 0 && fcntl(file, F_GETLK, &lock) == 0 && lock.l_type == F_WRLCK ? 0 : 1);
    }
    int status = 0;
    REQUIRE(waitpid(other, &status, 0) == other);
    CHECK(status == 0);
}
