// One moment of the record, and what tells that something was written.
#include "catch.hpp"
#include "operations/coupons.hpp"
#include "operations/desk.hpp"
#include "records/remembered.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

using namespace beadbook;
using namespace beadbook::test;

namespace {

Entry entry(const std::string &kind, const std::string &subject) {
    Entry out;
    out.at = "2026-11-25T10:00:00Z";
    out.who = "tester";
    out.kind = kind;
    out.subject = subject;
    out.body = "{\"text\":\"a\"}";
    return out;
}

void append(Ledger &ledger, const std::string &kind, const std::string &subject = "T-1") {
    Ledger::Transaction whole(ledger);
    ledger.append(entry(kind, subject));
    whole.commit();
}

/// Whether somebody else can write at this moment, who does not wait.
bool others_can_write(const Desk &desk) {
    SQLite::Database db(desk.path(), SQLite::OPEN_READWRITE);
    try {
        db.exec("BEGIN IMMEDIATE");
        db.exec("INSERT INTO sent (key, hash, answer) VALUES (hex(randomblob(8)), '', '')");
        db.exec("COMMIT");
        return true;
    } catch (const SQLite::Exception &e) {
        CHECK(e.getErrorCode() == 5); // SQLITE_BUSY
        return false;
    }
}

struct States {
    std::uint64_t anything, no_coupon;
    explicit States(Ledger &ledger)
        : anything(ledger.state()), no_coupon(ledger.state(Ledger::About::no_coupon)) {}
};

} // namespace

TEST_CASE("while a moment stands nobody commits, and all that is read is of it") {
    Desk desk;
    Ledger &ledger = desk.book.ledger();
    append(ledger, "remark");
    CHECK(others_can_write(desk));
    {
        const Ledger::Moment moment(ledger);
        const std::string head = ledger.head();
        CHECK_FALSE(others_can_write(desk));
        {
            const Ledger::Moment within(ledger);
            CHECK(ledger.head() == head);
        }
        CHECK_FALSE(others_can_write(desk));
    }
    CHECK(others_can_write(desk));
}

TEST_CASE("a transaction ends a moment that stands, and holds one that begins in it") {
    Desk desk;
    Ledger &ledger = desk.book.ledger();
    append(ledger, "remark");
    {
        const Ledger::Moment moment(ledger);
        const std::string before = ledger.head();
        {
            Ledger::Transaction whole(ledger);
            const std::string hash = ledger.append(entry("remark", "T-1")).hash;
            {
                const Ledger::Moment within(ledger);
                CHECK(ledger.head() == hash);
            }
            CHECK(ledger.append(entry("remark", "T-1")).seq == 3);
            whole.commit();
        }
        CHECK(ledger.head() != before);
        CHECK(others_can_write(desk));
        CHECK_NOTHROW(ledger.check_chain());
    }
    const Ledger::Moment moment(ledger);
    CHECK(ledger.entries_of(Family::coupon, "T-1").size() == 3);
    CHECK_NOTHROW(ledger.check_chain());
    CHECK(ledger.verify().faults.empty());
}

TEST_CASE("an entry about a coupon leaves what hangs on none; any other does not") {
    Desk desk;
    Ledger &ledger = desk.book.ledger();
    for (const char *kind : {"coupon", "exam", "indication", "remark", "verdict", "grade", "photo"}) {
        INFO(kind);
        const States before(ledger);
        append(ledger, kind);
        CHECK(States(ledger).anything != before.anything);
        CHECK(States(ledger).no_coupon == before.no_coupon);
        CHECK(States(ledger).anything == States(ledger).anything);
    }
    for (const char *kind : {"welder", "use", "person", "equipment", "filling"}) {
        INFO(kind);
        const States before(ledger);
        append(ledger, kind, "X");
        CHECK(States(ledger).anything != before.anything);
        CHECK(States(ledger).no_coupon != before.no_coupon);
    }
}

TEST_CASE("what others write, and what is rolled back, is not known to be about coupons alone") {
    Desk desk;
    Ledger &ledger = desk.book.ledger();
    append(ledger, "remark");
    States before(ledger);
    {
        Ledger other(desk.path(), Ledger::Mode::write);
        append(other, "person", "A. Field");
    }
    append(ledger, "remark"); // behind one that was not seen here
    CHECK(States(ledger).no_coupon != before.no_coupon);

    before = States(ledger);
    {
        const Ledger::Transaction undone(ledger);
        ledger.append(entry("person", "B. Stone"));
        CHECK(States(ledger).no_coupon != before.no_coupon);
        before = States(ledger);
    }
    CHECK(States(ledger).no_coupon != before.no_coupon);

    Ledger::Transaction whole(ledger);
    before = States(ledger);
    {
        const Ledger::Transaction part(ledger);
        ledger.append(entry("person", "B. Stone"));
        before = States(ledger);
    }
    CHECK(States(ledger).no_coupon != before.no_coupon);
    whole.commit();
}

TEST_CASE("what is remembered of people stays while coupons are written, and no longer") {
    Desk desk;
    Ledger &ledger = desk.book.ledger();
    Remembered<int, int, 10, Ledger::About::no_coupon> of_people;
    Remembered<int, int> of_all;
    int people = 0, all = 0;
    const auto ask = [&] {
        of_people.of(ledger, 1, [&] { return ++people; });
        of_all.of(ledger, 1, [&] { return ++all; });
    };
    ask();
    ask();
    CHECK(people == 1);
    CHECK(all == 1);
    append(ledger, "remark");
    ask();
    CHECK(people == 1);
    CHECK(all == 2);
    append(ledger, "person", "A. Field");
    ask();
    CHECK(people == 2);
    CHECK(all == 3);
}
