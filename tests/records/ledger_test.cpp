#include "catch.hpp"
#include "criteria/shipped.hpp"
#include "records/book.hpp"
#include "temporary.hpp"

#include <csignal>
#include <fstream>
#include <sys/stat.h>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

using namespace beadbook;
using namespace beadbook::test;

namespace {

const Stamp stamp{"2026-11-25T10:00:00Z", "tester"};

CouponRecord coupon(const std::string &id) {
    CouponRecord c;
    c.id = id;
    c.set("thickness", "0.065 in");
    c.set("weld-length", "8 in");
    return c;
}

/// A record with one coupon, one exam and three indications.
void fill(Book &book, const std::string &id = "T-1") {
    book.ledger().transact([&] {
        book.register_coupon(coupon(id), stamp);
        ExamRecord exam;
        exam.method = Exam::RT;
        exam.date = "2026-11-25";
        book.add_exam(id, exam, stamp);
        std::vector<IndicationRecord> found;
        for (const char *place : {"1", "2", "3"}) {
            IndicationRecord i;
            i.type = *Vocabulary::shipped().find("gas pore");
            i.measures[Quantity::size] = parse_typed("0.04", Dimension::length, Unit::inch);
            i.at = parse_typed(place, Dimension::length, Unit::inch);
            found.push_back(i);
        }
        book.add_indications(id, 1, found, stamp);
    });
}

/// Changes the file behind the program's back.
void tamper(const std::string &path, const std::string &sql) {
    SQLite::Database db(path, SQLite::OPEN_READWRITE);
    db.exec("DROP TRIGGER entry_never_changes; DROP TRIGGER entry_never_goes");
    db.exec("PRAGMA foreign_keys = OFF");
    db.exec(sql);
}

std::string trouble(const std::string &path, Ledger::Mode mode = Ledger::Mode::write) {
    try {
        Ledger ledger(path, mode);
        const auto v = ledger.verify();
        return v.faults.empty() ? "holds" : v.faults.front();
    } catch (const StoreError &e) {
        return e.what();
    }
}

} // namespace

TEST_CASE("what is written is read back, with who and when") {
    const TemporaryFolder folder;
    {
        Book book(folder.file("b.db"), Ledger::Mode::create);
        fill(book);
    }
    Book book(folder.file("b.db"), Ledger::Mode::read);
    const CouponState state = book.coupon("T-1");
    CHECK(state.record == coupon("T-1"));
    REQUIRE(state.exams.size() == 1);
    REQUIRE(state.indications.size() == 3);
    CHECK(state.indications[1].at->text == "2 in");
    CHECK(state.found()[2].measures[Quantity::size] == nm_per_inch / 25);
    const auto history = book.history("T-1");
    CHECK(history.size() == 5);
    CHECK(history[0].who == "tester");
    CHECK(history[0].previous == std::string(64, '0'));
    for (std::size_t i = 1; i < history.size(); ++i) CHECK(history[i].previous == history[i - 1].hash);
    CHECK(book.ledger().verify().entries == 5);
}

TEST_CASE("a correction supersedes and keeps the old entry") {
    const TemporaryFolder folder;
    Book book(folder.file("b.db"), Ledger::Mode::create);
    fill(book);
    auto better = book.coupon("T-1").indications[0];
    better.measures[Quantity::size] = parse_typed("0.05", Dimension::length, Unit::inch);
    book.ledger().transact([&] { book.correct_indication("T-1", better, stamp, "read wrong"); });
    book.ledger().transact([&] { book.withdraw_indication("T-1", 2, stamp, "false indication"); });
    const CouponState now = book.coupon("T-1");
    REQUIRE(now.indications.size() == 2);
    CHECK(now.indications[0].measures.at(Quantity::size).text == "0.05 in");
    CHECK(now.last_indication == 3); // numbers are not used twice
    CHECK(book.coupon("T-1", 6).indications[0].measures.at(Quantity::size).text == "0.04 in");
    CHECK(book.history("T-1").size() == 7);
    CHECK(book.ledger().verify().faults.empty());
    CHECK_THROWS_WITH(book.ledger().transact([&] { book.correct_indication("T-1", better, stamp, " "); }),
                      says("needs a reason"));
    CHECK_THROWS_WITH(book.ledger().transact([&] { book.withdraw_exam("T-1", 1, stamp, "x"); }),
                      says("withdraw its indications first"));
    CouponRecord shorter = now.record;
    shorter.set("weld-length", "2 in");
    CHECK_THROWS_WITH(book.ledger().transact([&] { book.change_coupon(shorter, stamp, "x"); }),
                      says("#3 would not fit"));
}

TEST_CASE("a failed command stores nothing of itself") {
    const TemporaryFolder folder;
    Book book(folder.file("b.db"), Ledger::Mode::create);
    fill(book);
    CHECK_THROWS_AS(book.ledger().transact([&] {
        book.add_remark("T-1", "first", stamp);
        book.add_remark("no such coupon", "second", stamp);
    }),
                    DataError);
    CHECK(book.coupon("T-1").remarks.empty());
    CHECK(book.ledger().verify().entries == 5);
}

TEST_CASE("the database itself refuses to change or delete") {
    const TemporaryFolder folder;
    const std::string path = folder.file("b.db");
    {
        Book book(path, Ledger::Mode::create);
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
            Book book(path, Ledger::Mode::create);
            fill(book);
        }
        tamper(path, sql);
        INFO(sql);
        CHECK(trouble(path).find(expected) != std::string::npos);
    }
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
        Book book(folder.file("new.db"), Ledger::Mode::create);
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
        Book book(folder.file("b.db"), Ledger::Mode::create);
        fill(book);
    }
    const std::string whole = read_file(folder.file("b.db"));
    for (std::size_t size = 1; size < whole.size(); size += 509) {
        write_file(folder.file("cut.db"), whole.substr(0, size));
        INFO(size);
        if (trouble(folder.file("cut.db"), Ledger::Mode::read) != "holds") continue;
        // Only the empty end of the last page was cut off: then nothing may be missing.
        CHECK(Ledger(folder.file("cut.db"), Ledger::Mode::read).verify().entries == 5);
        CHECK(whole.find_first_not_of('\0', size) == std::string::npos);
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
    Book book(folder.file("b.db"), Ledger::Mode::create);
    fill(book);
    book.ledger().backup(folder.file("copy.db"));
    CHECK(trouble(folder.file("copy.db"), Ledger::Mode::read) == "holds");
    CHECK_THROWS_WITH(book.ledger().backup(folder.file("copy.db")), says("never overwrites"));
}

TEST_CASE("two writers wait for each other and the chain holds") {
    const TemporaryFolder folder;
    const std::string path = folder.file("b.db");
    {
        Book book(path, Ledger::Mode::create);
        fill(book);
    }
    const auto write = [&] {
        Book book(path, Ledger::Mode::write);
        for (int n = 0; n < 50; ++n)
            book.ledger().transact([&] { book.add_remark("T-1", "from a thread", stamp); });
    };
    std::thread one(write), two(write), three(write);
    one.join();
    two.join();
    three.join();
    Book book(path, Ledger::Mode::read);
    CHECK(book.coupon("T-1").remarks.size() == 150);
    CHECK(book.ledger().verify().faults.empty());
}

TEST_CASE("a killed process never leaves half a command") {
    const TemporaryFolder folder;
    const std::string path = folder.file("b.db");
    {
        Book book(path, Ledger::Mode::create);
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
            Book book(path, Ledger::Mode::write);
            for (bool first = true;; first = false) {
                book.ledger().transact([&] {
                    for (int k = 0; k < 3; ++k) book.add_remark("T-1", "one of three", stamp);
                });
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
        Book book(path, Ledger::Mode::write); // rolls back what was not committed
        const auto v = book.ledger().verify();
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
            e.body = kind == "remark"
                         ? nlohmann::json{{"text", "kept"}}
                         : nlohmann::json{{"id", "T-1"}, {"fields", {{"note", std::to_string(seq)}}}};
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
            insert.bind(8, e.body.dump());
            insert.bind(9, e.previous);
            insert.bind(10, previous);
            insert.exec();
        };
        add(1, "coupon", {});
        add(2, "remark", {});
        add(3, "coupon", 1);
    }
    Book book(path, Ledger::Mode::read);
    const Verification v = book.ledger().verify();
    CHECK(v.faults.empty());
    CHECK(v.entries == 3);
    CHECK(book.coupon("T-1").record.get("note") == "3");
    CHECK(book.coupon("T-1").remarks.size() == 1);
    Book again(path, Ledger::Mode::write);
    again.ledger().transact([&] { again.add_remark("T-1", "goes on", {"2026-11-25T10:00:00Z", "tester"}); });
    CHECK(again.ledger().verify().faults.empty());
    SQLite::Database db(path, SQLite::OPEN_READWRITE);
    CHECK_THROWS_AS(db.exec("UPDATE entry SET who = 'x'"), SQLite::Exception);
    CHECK_THROWS_AS(db.exec("DELETE FROM entry"), SQLite::Exception);
    CHECK(db.execAndGet("SELECT count(*) FROM standing").getInt() == 3);
}
