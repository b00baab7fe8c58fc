// What a crash within a commit leaves: the journal is played back by whoever opens the record next, also for
// reading; never into another file.
#include "catch.hpp"
#include "faults/child.hpp"
#include "records/ledger.hpp"
#include "records/schema.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <csignal>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// Leaves a record as a crash in the middle of a commit does: pages written, the journal still there. A child
/// fills the cache until pages must be spilled into the file, and dies.
void crash_within_commit(const std::string &path) {
    const pid_t child = fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        SQLite::Database db(path, SQLite::OPEN_READWRITE);
        db.exec("PRAGMA cache_size = 2; PRAGMA cache_spill = ON; BEGIN IMMEDIATE");
        for (int i = 0; i < 400; ++i)
            db.exec("INSERT INTO document (hash, name, bytes) VALUES ('" + std::to_string(i) +
                    "', 'x', zeroblob(3000))");
        raise(SIGKILL);
    }
    int status = 0;
    REQUIRE(waitpid(child, &status, 0) == child);
    REQUIRE(WIFSIGNALED(status));
    REQUIRE(std::filesystem::file_size(path + "-journal") > 512);
}

} // namespace

TEST_CASE("a crash within a commit is mended by the next command, also by one that only reads", "[faults]") {
    const Template start;
    for (const auto &words : std::vector<std::vector<std::string>>{
             {"show", "T-1"}, {"verify"}, {"backup", "COPY"}, {"remark", "T-1", "x"}}) {
        const TemporaryFolder folder;
        const std::string book = folder.file("b.db");
        start.copy_to(book);
        crash_within_commit(book);
        auto asked = words;
        if (asked.back() == "COPY") asked.back() = folder.file("copy.db");
        const Ended ended = run({asked, book});
        INFO(words.front() << ": " << ended.err);
        CHECK(ended.code == 0);
        CHECK_FALSE(std::filesystem::exists(book + "-journal"));
        CHECK(sound_entries(book) == start.entries + (words.front() == "remark" ? 1 : 0));
        CHECK(SQLite::Database(book).execAndGet("SELECT count(*) FROM document").getInt() == 0);
    }
}

TEST_CASE("who may not mend what a crash left is told what to do", "[faults]") {
    if (geteuid() != 0) {
        WARN("skipped: only root can become somebody who may not write");
        return;
    }
    const Template start;
    const TemporaryFolder folder;
    const std::string book = folder.file("b.db");
    start.copy_to(book);
    crash_within_commit(book);
    chmod(book.c_str(), 0444);
    chmod((book + "-journal").c_str(), 0444);
    chmod(folder.file("").c_str(), 0555);
    const pid_t child = fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        if (setgid(65534) != 0 || setuid(65534) != 0) _exit(99);
        std::string said = "read";
        try {
            Ledger(book, Ledger::Mode::read).verify();
        } catch (const Refusal &e) {
            said = e.what();
        }
        _exit(said.find("broken off midway") != std::string::npos &&
                      said.find("somebody who may write") != std::string::npos
                  ? 0
                  : 1);
    }
    int status = 0;
    REQUIRE(waitpid(child, &status, 0) == child);
    CHECK(WEXITSTATUS(status) == 0);
    CHECK(std::filesystem::exists(book + "-journal"));
}

TEST_CASE("a journal of another file is not played back into a backup that was copied beside it",
          "[faults]") {
    const Template start;
    const TemporaryFolder folder;
    const std::string book = folder.file("b.db"), copy = folder.file("backup.db");
    start.copy_to(book);
    REQUIRE(run({{"backup", copy}, book}).code == 0);
    for (int n = 0; n < 5; ++n) REQUIRE(run({{"remark", "T-1", "later"}, book}).code == 0);
    crash_within_commit(book);
    const std::string backup = read_file(copy);
    write_file(book, backup);
    std::filesystem::resize_file(book, backup.size());
    for (const auto &words :
         std::vector<std::vector<std::string>>{{"show", "T-1"}, {"remark", "T-1", "x"}, {"verify"}}) {
        const Ended ended = run({words, book});
        CHECK(ended.code == 4);
        CHECK_THAT(ended.err, says("move the journal away first"));
        CHECK(read_file(book) == backup);
    }
    std::filesystem::rename(book + "-journal", folder.file("journal"));
    CHECK(run({{"show", "T-1"}, book}).code == 0);
    CHECK(sound_entries(book) == start.entries);
    // Nor is a backup begun where one lies.
    std::filesystem::rename(folder.file("journal"), folder.file("new.db-journal"));
    const Ended again = run({{"backup", folder.file("new.db")}, book});
    CHECK(again.code == 4);
    CHECK_THAT(again.err, says("new.db-journal"));
    CHECK_FALSE(std::filesystem::exists(folder.file("new.db")));
}
