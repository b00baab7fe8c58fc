#include "catch.hpp"
#include "criteria/shipped.hpp"
#include "operations/coupons.hpp"
#include "operations/desk.hpp"
#include "operations/examining.hpp"
#include "operations/logging.hpp"
#include "records/behind.hpp"
#include "records/codecs/bodies.hpp"
#include "records/schema.hpp"
#include "records/trouble.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <csignal>
#include <fstream>
#include <sys/stat.h>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

using namespace beadbook;
using namespace beadbook::test;

namespace {

CouponRequest coupon(const std::string &id) {
    return {id, {{"thickness", "0.065 in"}, {"weld-length", "8 in"}}};
}

/// A record with one coupon, one exam and three indications.
void fill(OpenBook &book, const std::string &id = "T-1") {
    book.write([&](Writing &w) {
        register_coupon(w, coupon(id));
        ExamRequest exam;
        exam.coupon = id;
        exam.method = Exam::RT;
        record_exam(w, exam);
        log_lines(w, {id, 0, "gas pore 0.04 at 1\ngas pore 0.04 at 2\ngas pore 0.04 at 3\n"});
    });
}
void remark(OpenBook &book, const std::string &text, int times = 1) {
    book.write([&](Writing &w) {
        for (int n = 0; n < times; ++n) remark_on(w, "T-1", text);
    });
}

} // namespace

TEST_CASE("what is written is read back, with who and when") {
    const TemporaryFolder folder;
    {
        OpenBook book(folder.file("b.db"), Ledger::Mode::create);
        fill(book);
    }
    OpenBook book(folder.file("b.db"), Ledger::Mode::read);
    const CouponState state = book.office.coupon("T-1");
    CHECK(state.record == described(book.catalogue, coupon("T-1")));
    REQUIRE(state.exams.size() == 1);
    REQUIRE(state.indications.size() == 3);
    CHECK(state.indications[1].at->text == "2 in");
    CHECK(state.found()[2].measures[Quantity::size] == nm_per_inch / 25);
    const auto history = book.book.history("T-1");
    CHECK(history.size() == 5);
    CHECK(history[0].who == "tester");
    CHECK(history[0].previous == std::string(64, '0'));
    for (std::size_t i = 1; i < history.size(); ++i) CHECK(history[i].previous == history[i - 1].hash);
    CHECK(book.book.ledger().verify().entries == 5);
}

TEST_CASE("a correction supersedes and keeps the old entry") {
    const TemporaryFolder folder;
    OpenBook book(folder.file("b.db"), Ledger::Mode::create);
    fill(book);
    const auto better = [](Writing &w, const std::string &why) {
        return correct_indication(w, "T-1", 1, "gas pore 0.05 at 1", why);
    };
    book.write([&](Writing &w) { return better(w, "read wrong"); });
    book.write([&](Writing &w) { withdraw_indication(w, "T-1", 2, "false indication"); });
    const CouponState now = book.office.coupon("T-1");
    REQUIRE(now.indications.size() == 2);
    CHECK(now.indications[0].measures.at(Quantity::size).text == "0.05 in");
    CHECK(now.last_indication == 3); // numbers are not used twice
    CHECK(book.office.coupon("T-1", 6).indications[0].measures.at(Quantity::size).text == "0.04 in");
    CHECK(book.book.history("T-1").size() == 7);
    CHECK(book.book.ledger().verify().faults.empty());
    CHECK_THROWS_WITH(
        book.write([](Writing &w) { return correct_indication(w, "T-1", 1, "gas pore 0.06 at 1", " "); }),
        says("needs a reason"));
    CHECK_THROWS_WITH(book.write([&](Writing &w) { return better(w, "once more"); }),
                      says("this changes nothing"));
    CHECK_THROWS_WITH(book.write([&](Writing &w) { withdraw_exam(w, "T-1", 1, "x"); }),
                      says("withdraw its indications first"));
    CHECK_THROWS_WITH(book.write([&](Writing &w) {
        return change_coupon(w, {{"T-1", {{"weld-length", "2 in"}}}, {}, "x"});
    }),
                      says("#3 would not fit"));
}

TEST_CASE("a failed command stores nothing of itself") {
    const TemporaryFolder folder;
    OpenBook book(folder.file("b.db"), Ledger::Mode::create);
    fill(book);
    CHECK_THROWS_AS(book.write([&](Writing &w) {
        remark_on(w, "T-1", "first");
        remark_on(w, "no such coupon", "second");
    }),
                    DataError);
    CHECK(book.office.coupon("T-1").remarks.empty());
    CHECK(book.book.ledger().verify().entries == 5);
}

TEST_CASE("the database itself refuses to change or delete") {
    const TemporaryFolder folder;
    const std::string path = folder.file("b.db");
    {
        OpenBook book(path, Ledger::Mode::create);
        fill(book);
    }
    SQLite::Database db(path, SQLite::OPEN_READWRITE);
    CHECK_THROWS_WITH(db.exec("UPDATE entry SET who = 'x'"), says("append-only"));
    CHECK_THROWS_WITH(db.exec("DELETE FROM entry"), says("append-only"));
    CHECK(db.execAndGet("SELECT count(*) FROM standing").getInt() == 5);
}

TEST_CASE("verify names the first entry that does not hold") {
    const std::vector<std::pair<std::string, std::string>> rows{
        {"UPDATE entry SET body = replace(body, '0.04', '0.01') WHERE seq = 3", "entry 3 does not hold"},
        {"UPDATE entry SET who = 'somebody' WHERE seq = 2", "entry 2 does not hold"},
        {"UPDATE entry SET at = '2020-01-01T00:00:00Z' WHERE seq = 1", "entry 1 does not hold"},
        {"DELETE FROM entry WHERE seq = 4", "entry 4 is missing"},
        {"UPDATE entry SET previous = hash WHERE seq = 5", "entry 5 does not hold"},
        {"UPDATE entry SET seq = 9 WHERE seq = 5", "entry 5 is missing"},
    };
    for (const auto &[sql, expected] : rows) {
        const TemporaryFolder folder;
        const std::string path = folder.file("b.db");
        {
            OpenBook book(path, Ledger::Mode::create);
            fill(book);
        }
        behind(path, sql);
        INFO(sql);
        CHECK(trouble(path).find(expected) != std::string::npos);
    }
}

TEST_CASE("verify tells of entries that say an earlier time than one before them") {
    const TemporaryFolder folder;
    OpenBook book(folder.file("b.db"), Ledger::Mode::create);
    fill(book);
    CHECK(book.book.ledger().verify().set_back.empty());
    book.outside.now = [] { return std::string("2026-11-24T10:00:00Z"); };
    remark(book, "one more");
    const Verification chain = book.book.ledger().verify();
    CHECK(chain.faults.empty());
    CHECK(chain.set_back == std::vector<std::int64_t>{chain.entries});
}

TEST_CASE("files that are no record of ours are refused and left alone") {
    const TemporaryFolder folder;
    write_file(folder.file("text"), "hello, this is a letter and not a database at all");
    CHECK(trouble(folder.file("text")).find("no record of ours") != std::string::npos);
    CHECK(read_file(folder.file("text")) == "hello, this is a letter and not a database at all");
    CHECK(trouble(folder.file("none")).find("there is no record yet") != std::string::npos);
    CHECK(trouble(folder.file("")).find("folder") != std::string::npos);
    {
        SQLite::Database other(folder.file("other.db"), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        other.exec("CREATE TABLE recipes (name TEXT)");
    }
    CHECK(trouble(folder.file("other.db")).find("belongs to another program") != std::string::npos);
    {
        OpenBook book(folder.file("new.db"), Ledger::Mode::create);
        fill(book);
        SQLite::Database db(folder.file("new.db"), SQLite::OPEN_READWRITE);
        db.exec("PRAGMA user_version = 99");
    }
    CHECK(trouble(folder.file("new.db")).find("newer beadbook") != std::string::npos);
    CHECK(trouble(folder.file("no/such/folder/b.db"), Ledger::Mode::write).find("there is no record yet") !=
          std::string::npos);
}

TEST_CASE("a truncated or damaged record is refused or found out, at every length") {
    const TemporaryFolder folder;
    {
        OpenBook book(folder.file("b.db"), Ledger::Mode::create);
        fill(book);
    }
    const std::string whole = read_file(folder.file("b.db"));
    const auto lines = [&](const char *file) {
        return Ledger(folder.file(file), Ledger::Mode::read).lines({}).size();
    };
    for (std::size_t size = 1; size < whole.size(); size += 509) {
        write_file(folder.file("cut.db"), whole.substr(0, size));
        INFO(size);
        if (trouble(folder.file("cut.db"), Ledger::Mode::read) != "holds") continue;
        // Only of the last page something was cut off that no row needs: then nothing may be missing.
        constexpr std::size_t page = 4096;
        CHECK(size > whole.size() - page);
        CHECK(Ledger(folder.file("cut.db"), Ledger::Mode::read).verify().entries == 5);
        CHECK(lines("cut.db") == lines("b.db"));
    }
    // One flipped bit in any entry's text is found.
    const std::size_t at = whole.find("0.04 in");
    std::string flipped = whole;
    flipped[at] ^= 1;
    write_file(folder.file("flip.db"), flipped);
    CHECK(trouble(folder.file("flip.db"), Ledger::Mode::read) != "holds");
}

TEST_CASE("a backup is a verified copy and never overwrites") {
    const TemporaryFolder folder;
    OpenBook book(folder.file("b.db"), Ledger::Mode::create);
    fill(book);
    book.book.ledger().backup(folder.file("copy.db"));
    CHECK(trouble(folder.file("copy.db"), Ledger::Mode::read) == "holds");
    CHECK_THROWS_WITH(book.book.ledger().backup(folder.file("copy.db")), says("never overwrites"));
}

TEST_CASE("two writers wait for each other and the chain holds") {
    const TemporaryFolder folder;
    const std::string path = folder.file("b.db");
    {
        OpenBook book(path, Ledger::Mode::create);
        fill(book);
    }
    const auto write = [&] {
        OpenBook book(path, Ledger::Mode::write);
        for (int n = 0; n < 50; ++n) remark(book, "from a thread");
    };
    std::thread one(write), two(write), three(write);
    one.join();
    two.join();
    three.join();
    OpenBook book(path, Ledger::Mode::read);
    CHECK(book.office.coupon("T-1").remarks.size() == 150);
    CHECK(book.book.ledger().verify().faults.empty());
}

TEST_CASE("a killed process never leaves half a command") {
    const TemporaryFolder folder;
    const std::string path = folder.file("b.db");
    {
        OpenBook book(path, Ledger::Mode::create);
        fill(book);
    }
    int stopped_midway = 0;
    for (int n = 0; n < 60; ++n) {
        int started[2];
        REQUIRE(pipe(started) == 0);
        const pid_t child = fork();
        if (child == 0) {
            // Each command writes three remarks; after the first the parent kills at some moment within
            // another.
            OpenBook book(path, Ledger::Mode::write);
            for (bool first = true;; first = false) {
                remark(book, "one of three", 3);
                if (first && write(started[1], "x", 1) != 1) _exit(1);
            }
        }
        close(started[1]);
        char byte = 0;
        REQUIRE(read(started[0], &byte, 1) == 1);
        close(started[0]);
        usleep(static_cast<useconds_t>(700 * (n % 20)));
        kill(child, SIGKILL);
        int status = 0;
        waitpid(child, &status, 0);
        stopped_midway += WIFSIGNALED(status) ? 1 : 0;
        OpenBook book(path, Ledger::Mode::write); // rolls back what was not committed
        const auto v = book.book.ledger().verify();
        REQUIRE(v.faults.empty());
        REQUIRE((v.entries - 5) % 3 == 0);
    }
    CHECK(stopped_midway == 60);
    CHECK(Book(path, Ledger::Mode::read).coupon("T-1").remarks.size() >= 3 * 60);
}

TEST_CASE("a record of version 1 is carried forward whole, also by a command that only reads") {
    const TemporaryFolder folder;
    const std::string path = folder.file("old.db");
    {
        // As version 1 wrote it, with its own hashes: three entries, one of which supersedes another.
        SQLite::Database db(path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        db.exec("PRAGMA foreign_keys = ON");
        db.exec(shipped_file("0001_ledger.sql"));
        db.exec("PRAGMA user_version = 1");
        db.exec("PRAGMA application_id = 1111834948");
        std::string previous(64, '0');
        const auto add = [&](std::int64_t seq, const std::string &kind,
                             std::optional<std::int64_t> supersedes) {
            Entry e;
            e.seq = seq;
            e.at = "2026-01-02T03:04:05Z";
            e.who = "tester";
            e.kind = kind;
            e.subject = "T-1";
            e.supersedes = supersedes;
            if (supersedes) e.reason = "mended";
            e.body = kind == "remark" ? R"({"text":"kept"})"
                                      : R"({"fields":{"note":")" + std::to_string(seq) + R"("},"id":"T-1"})";
            e.previous = previous;
            previous = hash_of(e);
            SQLite::Statement insert(db, "INSERT INTO entry VALUES (?,?,?,?,?,NULL,NULL,?,?,?,?,?)");
            insert.bind(1, e.seq);
            insert.bind(2, e.at);
            insert.bind(3, e.who);
            insert.bind(4, e.kind);
            insert.bind(5, e.subject);
            if (supersedes) {
                insert.bind(6, *supersedes);
                insert.bind(7, e.reason);
            }
            insert.bind(8, e.body);
            insert.bind(9, e.previous);
            insert.bind(10, previous);
            insert.exec();
        };
        add(1, "coupon", {});
        add(2, "remark", {});
        add(3, "coupon", 1);
    }
    OpenBook book(path, Ledger::Mode::read);
    const Verification v = book.book.ledger().verify();
    CHECK(v.faults.empty());
    CHECK(v.entries == 3);
    CHECK(book.office.coupon("T-1").record.get("note") == "3");
    CHECK(book.office.coupon("T-1").remarks.size() == 1);
    OpenBook again(path, Ledger::Mode::write);
    remark(again, "goes on");
    CHECK(again.book.ledger().verify().faults.empty());
    SQLite::Database db(path, SQLite::OPEN_READWRITE);
    CHECK_THROWS_AS(db.exec("UPDATE entry SET who = 'x'"), SQLite::Exception);
    CHECK_THROWS_AS(db.exec("DELETE FROM entry"), SQLite::Exception);
    CHECK(db.execAndGet("SELECT count(*) FROM standing").getInt() == 3);
}

TEST_CASE("a record of version 3 is read as it is, and takes people once it is written to") {
    const TemporaryFolder folder;
    const std::string path = folder.file("old.db");
    {
        SQLite::Database db(path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        for (const char *file : {"0001_ledger.sql", "0002_welders.sql", "0003_coupons_of_welder.sql"})
            db.exec(shipped_file(file));
        db.exec("PRAGMA user_version = 3");
        db.exec("PRAGMA application_id = 1111834948");
        Entry e;
        e.seq = 1;
        e.at = "2026-01-02T03:04:05Z";
        e.who = "tester";
        e.kind = "coupon";
        e.subject = "T-1";
        e.body = R"({"fields":{"welder":"L1"},"id":"T-1"})";
        e.previous = std::string(64, '0');
        SQLite::Statement insert(db, "INSERT INTO entry (seq, at, who, kind, subject, body, previous, hash) "
                                     "VALUES (1,?,?,?,?,?,?,?)");
        int column = 0;
        for (const auto &value : {e.at, e.who, e.kind, e.subject, e.body, e.previous, hash_of(e)})
            insert.bind(++column, value);
        insert.exec();
    }
    const auto version = [&] {
        return SQLite::Database(path, SQLite::OPEN_READONLY).execAndGet("PRAGMA user_version").getInt();
    };
    {
        Book book(path, Ledger::Mode::read);
        CHECK(book.people().empty());
        CHECK(book.all_equipment().empty());
        CHECK_FALSE(book.ledger().last_exam_by("A. Field", "MT"));
        CHECK(book.coupon("T-1").record.get("welder") == "L1");
    }
    CHECK(version() == 3);
    OpenBook now(path, Ledger::Mode::write);
    CHECK(version() == schema::newest_version());
    PersonRecord person;
    person.name = "T-1"; // a coupon may be called so too
    now.write([&](Writing &w) { w.add(codec::entry_of(person)); });
    CHECK(now.book.people() == std::vector<std::string>{"T-1"});
    CHECK(now.book.coupons_of("L1") == std::vector<std::string>{"T-1"});
    CHECK(now.book.welders().empty());
    CHECK(now.book.ledger().verify().faults.empty());
    CHECK(now.book.ledger().verify().entries == 2);
}
