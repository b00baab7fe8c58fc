#include "catch.hpp"
#include "operations/record_sheet.hpp"
#include "operations/yard.hpp"

using namespace beadbook;
using namespace beadbook::test;

TEST_CASE("a record sheet holds the qualification, how it stands, what bears on it, and the proof",
          "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2025-06-10", true,
                {{"process", "GTAW 0.05in + SMAW 0.1in"}, {"filler-group", "F6 + F4"}});
    yard.qualify("Q-1");
    const auto log = [&](auto what, const std::string &process) {
        yard.write([&](Writing &w) { return what(w, {"L1", process, parse_day("2025-08-01"), "frame 12"}); });
    };
    log(log_use, "SMAW");
    log(log_training, "SMAW");
    log(log_use, "GTAW");
    yard.coupon("Q-2", "2026-11-20", true, {{"process", "SMAW"}, {"filler-group", "F4"}, {"position", "1G"}});
    yard.write([](Writing &w) { return renew(w, {"L1", 2, {"Q-2"}, {}, ""}); });
    yard.write([](Writing &w) { return revoke(w, {"L1", 1, {}, "doubt"}); });
    yard.grade("Q-2", false);

    const RecordSheet sheet = record_sheet(yard.office, "L1", 2);
    CHECK(sheet.welder.name == "J. Reef");
    CHECK(sheet.held.weld.word(Trait::process) == "SMAW");
    CHECK(sheet.held.validity.state == Validity::State::lapsed);
    std::vector<std::string> kinds;
    for (const auto &e : sheet.events) kinds.push_back(e.kind);
    CHECK(kinds == std::vector<std::string>{"use", "training", "renewal"});
    CHECK(sheet.undone.size() == 1);
    CHECK(sheet.undone.contains(sheet.events.back().seq));
    CHECK(sheet.granted.who == "tester");
    CHECK(sheet.hash == yard.book.welder("L1").hashes.at(2));
    CHECK(sheet.head == yard.book.ledger().head());
    CHECK(sheet.head != sheet.hash);
    CHECK(record_sheet(yard.office, "L1", 1).held.validity.state == Validity::State::revoked);
    CHECK(record_sheet(yard.office, "L1", 2, parse_day("2025-07-01")).held.validity.state ==
          Validity::State::valid);
    CHECK_THAT(yard.refusal([&] { record_sheet(yard.office, "L1", 3); }), says("has no qualification 3"));
    CHECK_THAT(yard.refusal([&] { paper_of(yard.office, "L1", 2); }), says("it has no document"));
    CHECK_THAT(yard.refusal([&] { paper_of(yard.office, "L1", 3); }), says("has no qualification 3"));
}
