#include "catch.hpp"
#include "criteria/shipped.hpp"
#include "operations/coupons.hpp"
#include "operations/desk.hpp"
#include "records/schema.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

using namespace beadbook;
using namespace beadbook::test;

namespace {

void add(Desk &desk, const std::string &id, const std::string &welder) {
    desk.write([&](Writing &w) { return register_coupon(w, {id, {{"welder", welder}}}); });
}

using Marks = std::vector<std::string>;

} // namespace

TEST_CASE("a welder's coupons are all that ever named the welder, in the order of registration",
          "[standing]") {
    Desk desk;
    add(desk, "B-1", "L1");
    add(desk, "A-1", "L2");
    add(desk, "A-2", "L1");
    desk.write([](Writing &w) { return register_coupon(w, {"C-1", {}}); });
    desk.write([](Writing &w) { return change_coupon(w, {{"A-2", {{"welder", "L2"}}}, {}, "a slip"}); });
    CHECK(desk.book.coupons_of("L1") == Marks{"B-1", "A-2"});
    CHECK(desk.book.coupons_of("L2") == Marks{"A-1", "A-2"});
    CHECK(desk.book.coupons_of("").empty());
    CHECK(desk.book.coupons_of("L1' OR 1").empty());
}

TEST_CASE("a record of version 2 is read as it is, and gets its index when it is written to", "[standing]") {
    Desk desk;
    add(desk, "B-1", "L1");
    const auto version = [&](const std::string &path) {
        SQLite::Database db(path);
        return db.execAndGet("PRAGMA user_version").getInt();
    };
    const auto plan = [&](const std::string &path) {
        SQLite::Database db(path);
        SQLite::Statement query(db, "EXPLAIN QUERY PLAN SELECT subject FROM entry WHERE kind = 'coupon' AND "
                                    "json_extract(body, '$.fields.welder') = ?");
        query.executeStep();
        return query.getColumn(3).getString();
    };
    CHECK(version(desk.path()) == schema::newest_version());
    CHECK_THAT(plan(desk.path()), says("entry_by_welder"));
    // The same entry in a file as version 2 made it.
    const std::string old = desk.file("old.db");
    {
        SQLite::Database db(old, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        for (const char *file : {"0001_ledger.sql", "0002_welders.sql"}) db.exec(shipped_file(file));
        db.exec("PRAGMA user_version = 2; PRAGMA application_id = 1111834948");
        db.exec("ATTACH '" + desk.path() + "' AS new");
        db.exec("INSERT INTO entry (seq, at, who, kind, subject, body, previous, hash) "
                "SELECT seq, at, who, kind, subject, body, previous, hash FROM new.entry");
    }
    CHECK(Book(old, Ledger::Mode::read).coupons_of("L1") == Marks{"B-1"});
    CHECK(version(old) == 2);
    CHECK(Book(old, Ledger::Mode::write).coupons_of("L1") == Marks{"B-1"});
    CHECK(version(old) == schema::newest_version());
    CHECK_THAT(plan(old), says("entry_by_welder"));
}
