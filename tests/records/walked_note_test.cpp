// The note of how far a record was held to its chain: it saves a walk, and hides nothing.
#include "catch.hpp"
#include "operations/coupons.hpp"
#include "operations/desk.hpp"
#include "records/behind.hpp"
#include "records/walked_note.hpp"

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
    const auto note = walked_note::read(desk.path());
    return note ? note->seq : 0;
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
