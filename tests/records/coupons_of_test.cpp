#include "catch.hpp"
#include "operations/coupons.hpp"
#include "operations/desk.hpp"

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
    const auto version = [&] {
        SQLite::Database db(desk.path());
        return db.execAndGet("PRAGMA user_version").getInt();
    };
    const auto plan = [&] {
        SQLite::Database db(desk.path());
        SQLite::Statement query(db, "EXPLAIN QUERY PLAN SELECT subject FROM entry WHERE kind = 'coupon' AND "
                                    "json_extract(body, '$.fields.welder') = ?");
        query.executeStep();
        return query.getColumn(3).getString();
    };
    CHECK(version() == 4);
    CHECK_THAT(plan(), says("entry_by_welder"));
    {
        SQLite::Database db(desk.path(), SQLite::OPEN_READWRITE);
        db.exec("DROP INDEX entry_by_welder; PRAGMA user_version = 2");
    }
    CHECK(Book(desk.path(), Ledger::Mode::read).coupons_of("L1") == Marks{"B-1"});
    CHECK(version() == 2);
    CHECK(Book(desk.path(), Ledger::Mode::write).coupons_of("L1") == Marks{"B-1"});
    CHECK(version() == 4);
    CHECK_THAT(plan(), says("entry_by_welder"));
}
