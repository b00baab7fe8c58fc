#include "catch.hpp"
#include "operations/coupons.hpp"
#include "operations/desk.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

Entry remark(const std::string &text) {
    Entry out;
    out.at = "2026-11-25T10:00:00Z";
    out.who = "tester";
    out.kind = "remark";
    out.subject = "T-1";
    out.body = "{\"text\":\"" + text + "\"}";
    return out;
}

/// What another program finds in the record.
std::int64_t entries(const Desk &desk) {
    const Verification out = Ledger(desk.path(), Ledger::Mode::read).verify();
    CHECK(out.faults.empty());
    return out.entries;
}

} // namespace

TEST_CASE("a transaction within another is stored with it, and rolled back alone") {
    Desk desk;
    Ledger &ledger = desk.book.ledger();
    {
        Ledger::Transaction whole(ledger);
        ledger.append(remark("a"));
        {
            Ledger::Transaction part(ledger);
            ledger.append(remark("b"));
            Ledger::Transaction deeper(ledger);
            ledger.append(remark("c"));
            deeper.commit();
            part.commit();
        }
        {
            const Ledger::Transaction part(ledger);
            CHECK(ledger.append(remark("not")).seq == 4);
        }
        {
            const Ledger::Transaction part(ledger);
            CHECK_THROWS_AS(ledger.append({}), StoreError);
        }
        CHECK(ledger.append(remark("d")).seq == 4);
        CHECK(entries(desk) == 0);
        whole.commit();
    }
    CHECK(entries(desk) == 4);
    {
        const Ledger::Transaction whole(ledger);
        Ledger::Transaction part(ledger);
        ledger.append(remark("e"));
        part.commit();
    }
    CHECK(entries(desk) == 4);
    Ledger::Transaction next(ledger);
    ledger.append(remark("f"));
    next.commit();
    CHECK(entries(desk) == 5);
}
