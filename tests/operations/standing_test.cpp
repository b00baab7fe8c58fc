#include "catch.hpp"
#include "operations/people.hpp"
#include "operations/yard.hpp"
#include "records/codecs/bodies.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

void used(Yard &yard, const std::string &process, const std::string &day) {
    yard.write([&](Writing &w) { return log_use(w, {"L1", process, parse_day(day), "frame 12"}); });
}

/// Carries in a GTAW test of 2025-12-01 by ISO 9606-1 9.3 b, used since then.
void carried(Yard &yard) {
    yard.write([](Writing &w) {
        return carry(w, {"L1",
                         "iso-9606-1",
                         "b",
                         {{"units", "mm"}, {"process", "141"}, {"joint", "groove"}, {"welded", "2025-12-01"}},
                         {"paper.pdf", "paper"}});
    });
    used(yard, "141", "2026-05-20");
    used(yard, "141", "2026-11-10");
}

Done<StandingChange> extended(Yard &yard, const std::vector<std::string> &welds,
                              const std::vector<std::string> &coupons = {}, const std::string &why = "") {
    return yard.write([&](Writing &w) {
        return extend(w, {"L1", 1, parse_day("2026-11-25"), welds, coupons, why});
    });
}

} // namespace

TEST_CASE("the due list: what ends or must be used, and what to do", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-06-10");
    yard.qualify("Q-1");
    const DueList list = due(yard.office);
    REQUIRE(list.items.size() == 1);
    CHECK(list.items[0].days_left == 15);
    CHECK(list.items[0].to_do == ToDo::use);
    CHECK(list.through == parse_day("2027-01-24"));
    CHECK(due(yard.office, 14).items.empty());
    CHECK(due(yard.office, 15).items.size() == 1);
    CHECK(due(yard.office, 1, parse_day("2026-12-10")).items.at(0).days_left == 0);
    const DueQualification over = due(yard.office, 1, parse_day("2026-12-11")).items.at(0);
    CHECK(over.days_left == -1);
    CHECK(over.to_do == ToDo::renew);
    CHECK(over.coupons == 1);
    CHECK_NOTHROW(due(yard.office, 0)); // today alone
    for (const int days : {-1, -3, 40'000}) CHECK_THROWS_AS(due(yard.office, days), Refusal);
    yard.coupon("Q-2", "2021-06-10", true, {{"metal-group", ""}});
    yard.qualify("Q-2", "mil-std-1595a"); // five years, no renewal
    CHECK(due(yard.office).items.at(0).held.record.number == 2);
    CHECK(due(yard.office).items.at(0).to_do == ToDo::test);
}

TEST_CASE("a qualification that lasts and is used asks for its extension when its end comes near",
          "[standing]") {
    Yard yard;
    carried(yard);
    used(yard, "141", "2026-11-20");
    const DueList list = due(yard.office, 400);
    REQUIRE(list.items.size() == 1);
    CHECK(list.items[0].to_do == ToDo::use); // 2027-05-20 comes before 2027-12-01
    CHECK(due(yard.office, 400, parse_day("2027-04-01")).items.at(0).to_do == ToDo::use);
    // AWS D17.1 lets use carry it beyond the two years (clauses read).
    yard.coupon("Q-1", "2026-11-01", true, {{"metal-group", "Ia"}});
    yard.qualify("Q-1", "aws-d17.1", "the contract names Table III");
    CHECK(due(yard.office, 1000).items.back().to_do == ToDo::use);
}

TEST_CASE("use, a slip taken back, and revocation", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-06-10");
    yard.qualify("Q-1");
    used(yard, "GTAW", "2026-11-02");
    CHECK(yard.validity(1).until == parse_day("2027-05-02"));
    CHECK(yard.validity(1, "2027-05-02").state == Validity::State::valid);
    CHECK(yard.validity(1, "2027-05-03").state == Validity::State::lapsed);
    const auto seq = yard.book.welder("L1").events.at(0).seq;
    yard.write([&](Writing &w) { return retract(w, "L1", seq, "wrong welder"); });
    CHECK(yard.validity(1).until == parse_day("2026-12-10"));
    CHECK(yard.book.welder("L1").events.empty());

    const auto revoked = yard.write([](Writing &w) {
        return revoke(w, {"L1", 1, {}, "same fault three times"});
    });
    CHECK(revoked.value.event.day == parse_day("2026-11-25"));
    CHECK(revoked.value.now.validity.reason == "as of 2026-11-25");
    CHECK(yard.validity(1, "2026-11-24").state == Validity::State::valid);
    REQUIRE(due(yard.office).items.size() == 1);
    CHECK(due(yard.office).items[0].to_do == ToDo::test);
    CHECK_THAT(yard.refusal([&] {
        yard.write([](Writing &w) { return revoke(w, {"L1", 7, {}, "doubt"}); });
    }),
               says("has no qualification 7"));
    CHECK_THAT(yard.refusal([&] { yard.write([](Writing &w) {
                                      return revoke(w, {"L1", 1, {}, " "});
                                  }); }),
               says("for which reason?"));
    CHECK_THAT(yard.refusal([&] {
        yard.write([](Writing &w) { return revoke(w, {"L1", 1, parse_day("2026-11-26"), "doubt"}); });
    }),
               says("is to come"));
    const auto seq_of_it = yard.book.welder("L1").events.at(0).seq;
    yard.write([&](Writing &w) { return retract(w, "L1", seq_of_it, "it was another"); });
    CHECK(yard.validity(1).state == Validity::State::valid);
    CHECK_THAT(yard.validity(1).reason, says("revoked on 2026-11-25: same fault three times") &&
                                            says("which was taken back: it was another"));
}

TEST_CASE("welds of the work extend, each once", "[standing]") {
    // ISO 9606-1 9.3 b): two welds of the last six months, two more years (from memory).
    Yard yard;
    carried(yard);
    const std::string first = "2026-11-12 RT accepted by A. Field, line 4",
                      second = "2026-08-02 RT accepted by A. Field";
    CHECK_THAT(yard.refusal([&] { extended(yard, {first}); }), says("1 given; 2 welds of the last 6 months"));
    CHECK_THAT(yard.refusal([&] { extended(yard, {first, first}); }), says("is given twice"));
    CHECK_THAT(yard.refusal([&] {
        extended(yard, {first, "2026-05-20 RT accepted by A. Field"});
    }),
               says("does not count"));
    CHECK(extended(yard, {first, second}).value.now.validity.ends == parse_day("2029-05-25"));
    CHECK_THAT(yard.refusal([&] {
        extended(yard, {"2026-11-13 RT accepted by A. Field", second});
    }),
               says("extended it already on 2026-11-25"));
    CHECK(yard.validity(1).ends == parse_day("2029-05-25"));
    yard.coupon("Q-1", "2026-10-05");
    yard.qualify("Q-1");
    CHECK_THAT(yard.refusal([&] {
        yard.write([&](Writing &w) { return extend(w, {"L1", 2, {}, {first, second}, {}, ""}); });
    }),
               says("nothing is extended by welds of the work"));
}

TEST_CASE("nobody extends by welds that the record does not entitle him to accept", "[standing]") {
    Yard yard;
    carried(yard);
    yard.write([](Writing &w) {
        PersonRequest person;
        person.name = "A. Field";
        person.roles = {"technician"};
        person.certificates = {"VT II until 2027-05-01 number 9"};
        return write_person(w, person);
    });
    const auto extend_by = [&](const std::string &who) {
        return yard.refusal([&] {
            extended(yard, {"2026-11-12 RT accepted by " + who, "2026-08-02 RT accepted by " + who});
        });
    };
    CHECK_THAT(extend_by("A. Field"), says("A. Field accepts no weld by RT on 2026-11-12"));
    CHECK(extend_by("B. Moor").empty()); // of whom the record knows nothing
}

TEST_CASE("coupons extend as welds do, when the gate lets them pass", "[standing]") {
    Yard yard;
    carried(yard);
    const Yard::Fields plain{{"criteria", "iso-9606-1-tests"},
                             {"class", "test weld"},
                             {"process", "141"},
                             {"position", ""},
                             {"metal-group", ""},
                             {"filler-group", ""},
                             {"backing", ""},
                             {"progression", ""}};
    yard.coupon("Q-1", "2026-10-05", true, plain);
    auto practice = plain;
    practice["purpose"] = "practice";
    yard.coupon("Q-2", "2026-10-06", true, practice);
    CHECK_THAT(yard.refusal([&] { extended(yard, {}, {"Q-1", "Q-2"}); }), says("was welded for practice"));
    yard.coupon("Q-3", "2026-10-06", true, plain, {Exam::VT});
    CHECK_THAT(yard.refusal([&] { extended(yard, {}, {"Q-1", "Q-3"}); }), says("\n  coupon Q-3: no RT"));
    const auto done = extended(yard, {"2026-11-12 RT accepted by A. Field"}, {"Q-1"});
    CHECK(done.value.event.evidence.at(0).coupon == "Q-1");
    CHECK_THAT(done.value.event.text, says("2026-10-05 coupon Q-1"));
    CHECK(done.value.now.validity.ends == parse_day("2029-05-25"));
    yard.grade("Q-1", false);
    CHECK(yard.validity(1).ends == parse_day("2027-12-01"));
}

TEST_CASE("one use is told of all qualifications of the process", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-06-10");
    yard.qualify("Q-1");
    yard.coupon("Q-2", "2026-06-11", true, {{"position", "2G"}});
    yard.qualify("Q-2");
    const auto done = yard.write([](Writing &w) {
        return log_use(w, {"L1", "GTAW", parse_day("2026-11-02"), "frame 12"});
    });
    CHECK(done.value.held.size() == 2);
    CHECK(done.notes.empty());
    // The second test was welded after the first, which was a use of it.
    CHECK(yard.validity(1, "2026-06-20").until == parse_day("2026-12-11"));
}

TEST_CASE("a qualification whose test cannot be read is cannot say, and hides none of the others",
          "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-10-05");
    yard.qualify("Q-1");
    QualificationRecord old = yard.book.welder("L1").qualifications.at(0);
    old.number = 2;
    old.test.id = "Q-0";
    old.test.set("process", "GTAW 1/8in +");
    yard.write([&](Writing &w) {
        Entry entry;
        entry.kind = "qualification";
        entry.subject = "L1";
        entry.number = old.number;
        entry.body = codec::body_of(old);
        w.add(std::move(entry));
    });
    const WelderStanding standing = standing_of(yard.office, "L1");
    REQUIRE(standing.held.size() == 2);
    CHECK(standing.held[0].validity.state == Validity::State::valid);
    CHECK(standing.held[1].validity.state == Validity::State::in_doubt);
    CHECK_THAT(standing.held[1].validity.reason, says("cannot say: process 'GTAW 1/8in +': a part is empty"));
    CHECK(title_of(standing.held[1]) == "#2 ? by asme-ix");
    CHECK(covers(standing.held[1].range, standing.held[0].weld).covered != Truth::yes);
    CHECK(standing_of_all(yard.office).size() == 1);
    CHECK(due(yard.office, 36'500).items.size() == 2);
}

TEST_CASE("a coupon that cannot be read asks nothing if it passed or is of another kind", "[standing]") {
    Yard yard;
    const auto unreadable = [&](const std::string &id, bool passed, const Yard::Fields &more) {
        yard.coupon(id, "2026-10-01", passed, more);
        // As an older program took it.
        yard.write([&](Writing &w) {
            CouponRecord old = w.coupon(id).record;
            old.set("process", "GTAW 1/8in +");
            Entry entry = codec::entry_of(old);
            entry.supersedes = w.coupon(id).record_seq;
            entry.reason = "older";
            w.add(std::move(entry));
        });
    };
    unreadable("P-1", true, {});
    unreadable("F-1", false, {{"position", "2G"}});
    yard.coupon("Q-1", "2026-10-05");
    CHECK(yard.qualify("Q-1").value.held.size() == 1);
    unreadable("F-2", false, {});
    yard.coupon("Q-2", "2026-10-06");
    CHECK_THAT(yard.refusal([&] { yard.qualify("Q-2"); }), says("coupon F-2 cannot be read"));
}
