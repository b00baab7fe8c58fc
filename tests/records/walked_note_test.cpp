// The note of how far a record was held to its chain: it saves a walk, and hides nothing.
#include "catch.hpp"
#include "operations/coupons.hpp"
#include "operations/desk.hpp"
#include "records/behind.hpp"
#include "records/walked_note.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::string note_of(const Desk &desk) { return desk.path() + "-walked"; }

Entry remark() {
    Entry out;
    out.at = "2026-11-25T10:00:00Z";
    out.who = "tester";
    out.kind = "remark";
    out.subject = "T-1";
    out.body = "{\"text\":\"a\"}";
    return out;
}

void append(Desk &desk, int times) {
    Ledger::Transaction whole(desk.book.ledger());
    for (int i = 0; i < times; ++i) desk.book.ledger().append(remark());
    whole.commit();
}

/// By somebody who opens it anew.
void check_chain(const Desk &desk) { Ledger(desk.path(), Ledger::Mode::read).check_chain(); }

std::int64_t noted(const Desk &desk) {
    const auto note = walked_note::read(desk.path()).walked;
    return note ? note->seq : 0;
}

std::optional<Counted> counted(const Desk &desk) { return walked_note::read(desk.path()).counted; }

/// As a large record has it: all that is there now was counted.
void note_counted(Desk &desk, std::int64_t entries, std::int64_t coupons) {
    Noted noted = walked_note::read(desk.path());
    noted.counted = Counted{entries, desk.book.ledger().head(), coupons};
    walked_note::write(desk.path(), noted);
}

std::string trouble_on_opening(const Desk &desk) {
    try {
        Ledger(desk.path(), Ledger::Mode::read).lines({});
        return "";
    } catch (const StoreError &e) {
        return e.what();
    }
}

} // namespace

TEST_CASE("what was walked is noted, and follows what is written") {
    Desk desk;
    append(desk, 3);
    CHECK(noted(desk) == 0);
    check_chain(desk);
    CHECK(noted(desk) == 3);
    append(desk, 2);
    CHECK(noted(desk) == 5);
    check_chain(desk);
    CHECK(noted(desk) == 5);
    {
        const Ledger::Transaction undone(desk.book.ledger());
        desk.book.ledger().append(remark());
    }
    CHECK(noted(desk) == 5);
}

TEST_CASE("what another program changes is walked anew") {
    Desk desk;
    append(desk, 3);
    check_chain(desk);
    behind(desk.path(), "UPDATE entry SET subject = 'T-2' WHERE seq = 2");
    CHECK(noted(desk) == 0);
    CHECK_THROWS_AS(check_chain(desk), StoreError);
    // What is written behind it makes it no better.
    append(desk, 1);
    CHECK(noted(desk) == 0);
    CHECK_THROWS_AS(check_chain(desk), StoreError);
}

TEST_CASE("a note that is not of this record saves nothing and harms nothing") {
    Desk desk;
    append(desk, 3);
    check_chain(desk);
    const std::string right = test::read_file(note_of(desk));
    const std::string moment = right.substr(0, right.find('\n') + 1);
    for (const std::string &text :
         {std::string(), std::string("x"), moment, moment + "2", moment + "2 " + std::string(64, 'a') + "\n",
          moment + "-1 " + std::string(64, '0') + "\n", "1 2 3 4 5 6 7\n3 " + std::string(64, 'b') + "\n"}) {
        INFO(text);
        std::ofstream(note_of(desk), std::ios::trunc) << text;
        CHECK_NOTHROW(check_chain(desk));
        CHECK(noted(desk) == 3);
    }
    std::filesystem::remove(note_of(desk));
    std::filesystem::create_directory(note_of(desk));
    CHECK_NOTHROW(check_chain(desk));
}

TEST_CASE("what was counted is noted beside what was walked, and follows what is written") {
    Desk desk;
    append(desk, 3);
    note_counted(desk, 3, 1);
    CHECK(noted(desk) == 0);
    check_chain(desk);
    CHECK(noted(desk) == 3);
    CHECK(counted(desk)->entries == 3);
    append(desk, 2);
    desk.write([](Writing &w) { register_coupon(w, {"T-2", {}}); });
    desk.write([](Writing &w) {
        CouponChange change;
        change.said = {"T-2", {{"note", "a"}}};
        change.why = "said later";
        change_coupon(w, change);
    });
    REQUIRE(counted(desk));
    CHECK(counted(desk)->entries == 7);
    CHECK(counted(desk)->coupons == 2);
    CHECK(counted(desk)->hash == desk.book.ledger().head());
    CHECK(noted(desk) == 7);
    {
        const Ledger::Transaction undone(desk.book.ledger());
        desk.book.ledger().append(remark());
    }
    CHECK(counted(desk)->entries == 7);
    CHECK(trouble_on_opening(desk).empty());
}

TEST_CASE("what was counted is not counted again, and what another program takes out is missed") {
    Desk desk;
    append(desk, 5);
    behind(desk.path(), "DELETE FROM entry WHERE seq = 2");
    CHECK_THAT(trouble_on_opening(desk), says("entries were taken out behind the program"));
    note_counted(desk, 5, 1); // nobody can, after the file was changed; it shows that the note is read
    CHECK(trouble_on_opening(desk).empty());
    behind(desk.path(), "DELETE FROM entry WHERE seq = 3");
    CHECK_FALSE(counted(desk));
    CHECK_THAT(trouble_on_opening(desk), says("entries were taken out behind the program"));
}

TEST_CASE("behind what was counted a gap is seen, and a count of something else is none") {
    Desk desk;
    append(desk, 4);
    const std::string then = desk.book.ledger().head();
    append(desk, 3);
    behind(desk.path(), "DELETE FROM entry WHERE seq = 6");
    walked_note::write(desk.path(), {{}, Counted{4, then, 1}});
    CHECK_THAT(trouble_on_opening(desk), says("entries were taken out behind the program"));
    walked_note::write(desk.path(), {{}, Counted{7, std::string(64, 'a'), 1}});
    CHECK_THAT(trouble_on_opening(desk), says("entries were taken out behind the program"));
    walked_note::write(desk.path(), {{}, Counted{70, then, 1}});
    CHECK_THAT(trouble_on_opening(desk), says("entries were taken out behind the program"));
}

TEST_CASE("a line that lacks is told of where the coupons were counted with another number") {
    Desk desk;
    append(desk, 4);
    behind(desk.path(), "DELETE FROM coupon_line");
    CHECK_THAT(trouble_on_opening(desk), says("its table for lists has 1 coupon fewer"));
    note_counted(desk, 4, -1);
    CHECK_THAT(trouble_on_opening(desk), says("its table for lists has 1 coupon fewer"));
    note_counted(desk, 4, 1);
    CHECK(trouble_on_opening(desk).empty()); // as above: nobody can
}

TEST_CASE("a note of a program that counted nothing is read, and the other way round") {
    Desk desk;
    append(desk, 3);
    check_chain(desk);
    const std::string old = test::read_file(note_of(desk));
    CHECK(std::count(old.begin(), old.end(), '\n') == 2);
    note_counted(desk, 3, 1);
    CHECK(test::read_file(note_of(desk)).starts_with(old));
    // It asks for a number from 1 on in the second line.
    walked_note::write(desk.path(), {{}, Counted{3, desk.book.ledger().head(), 1}});
    CHECK_THAT(test::read_file(note_of(desk)), says("\n0 -\ncounted 3 "));
}
