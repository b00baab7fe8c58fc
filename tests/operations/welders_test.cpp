#include "catch.hpp"
#include "operations/yard.hpp"

using namespace beadbook;
using namespace beadbook::test;

TEST_CASE("a welder is registered once, and changed with a reason", "[standing]") {
    Yard yard;
    const auto enrolled = [&](const WelderRequest &r) {
        return yard.write([&](Writing &w) { return enrol(w, r); });
    };
    const auto changed = [&](const WelderRequest &r) {
        return yard.write([&](Writing &w) { return change_welder(w, r); });
    };
    CHECK_THAT(yard.refusal([&] { enrolled({"L1", {}, {}, {}, ""}); }), says("is registered already"));
    CHECK_THAT(yard.refusal([&] {
        enrolled({"L 1", {}, {}, {}, ""});
    }),
               says("a welder's mark is 1 to 40 letters"));
    CHECK_THAT(yard.refusal([&] { changed({"L7", "x", {}, {}, "slip"}); }), says("there is no welder 'L7'"));
    CHECK_THAT(yard.refusal([&] { changed({"L1", "A. Buoy", {}, {}, ""}); }), says("needs a reason"));
    CHECK_THAT(yard.refusal([&] { changed({"L1", "J. Reef", {}, {}, "slip"}); }), says("changes nothing"));
    CHECK_THAT(yard.refusal([&] {
        changed({"L1", "A. Buoy", {}, {}, "a new man"});
    }),
               says("is it the same person?"));
    changed({"L1", {}, "the yard", "left-handed", "it came later"});
    changed({"L1", "", {}, {}, "the name is not wanted"});
    const WelderRecord now = yard.book.welder("L1").record;
    CHECK(now == WelderRecord{"L1", "", "the yard", "left-handed"});
    CHECK(yard.book.welder_history("L1").size() == 3);
    CHECK(yard.book.welder_history("L1").back().reason == "the name is not wanted");
}

TEST_CASE("a coupon and a welder may have the same mark", "[standing]") {
    Yard yard;
    yard.write([](Writing &w) {
        register_coupon(w, {"X", {}});
        enrol(w, {"X", {}, {}, {}, ""});
    });
    CHECK(yard.book.coupon("X").record.id == "X");
    CHECK(standing_of(yard.office, "X").held.empty());
    CHECK(standing_of_all(yard.office).size() == 2);
}

TEST_CASE("use and training need a process, a text and a day that has come", "[standing]") {
    Yard yard;
    const auto logged = [&](const ProcessRequest &r) {
        return yard.write([&](Writing &w) { return log_use(w, r); });
    };
    CHECK_THAT(yard.refusal([&] { logged({"L1", "GTAW", {}, " "}); }), says("which work shows it?"));
    CHECK_THAT(yard.refusal([&] { logged({"L1", "", {}, "frame"}); }), says("in which process?"));
    CHECK_THAT(yard.refusal([&] {
        logged({"L1", "GTAW", parse_day("2026-11-26"), "frame"});
    }),
               says("'2026-11-26' is to come"));
    CHECK_THAT(yard.refusal([&] { logged({"L2", "GTAW", {}, "frame"}); }), says("there is no welder 'L2'"));
    try {
        logged({"L1", "GTAW", {}, ""});
    } catch (const Refusal &e) {
        CHECK(e.kind() == Refusal::Kind::request);
        CHECK(e.field() == "work");
    }
    yard.coupon("Q-1", "2026-10-05");
    yard.qualify("Q-1");
    // What would have no effect is not kept.
    CHECK_THAT(yard.refusal([&] {
        logged({"L1", "GTWA", {}, "frame"});
    }),
               says("holds no qualification in 'GTWA', only in GTAW; did you mean 'GTAW'?"));
    CHECK_THAT(yard.refusal([&] { logged({"L1", "SMAW", {}, "frame"}); }), says("only in GTAW"));
    CHECK(yard.book.welder("L1").events.empty());
    const auto small = logged({"L1", "gtaw", {}, "frame"});
    CHECK(small.notes.empty());
    CHECK(small.value.event.process == "GTAW");
    CHECK(small.value.held.size() == 1);
    CHECK(small.value.event.day == parse_day("2026-11-25"));
    CHECK(small.value.event.stamp.who == "tester");
    const auto trained = [&](const ProcessRequest &r) {
        return yard.write([&](Writing &w) { return log_training(w, r); });
    };
    CHECK_THAT(yard.refusal([&] {
        trained({"L1", "welding", {}, "roots"});
    }),
               says("process 'welding' is not known; expected GTAW"));
    const auto other = trained({"L1", "smaw", {}, "roots"});
    CHECK(other.value.event.process == "SMAW");
    CHECK(other.notes.size() == 1);
}

TEST_CASE("an entry is retracted once, with a reason; never the registration", "[standing]") {
    Yard yard;
    const auto logged = yard.write([](Writing &w) {
        return log_training(w, {"L1", "GTAW", {}, "root runs"});
    });
    const auto back = [&](std::int64_t seq, const std::string &why) {
        return yard.write([&](Writing &w) { return retract(w, "L1", seq, why); });
    };
    const auto seq = logged.value.event.seq;
    CHECK_THAT(yard.refusal([&] { back(seq, ""); }), says("needs a reason"));
    CHECK(back(seq, "wrong welder").value.kind == "training");
    CHECK(yard.book.welder("L1").events.empty());
    CHECK(yard.book.welder_history("L1").size() == 3);
    CHECK_THAT(yard.refusal([&] { back(seq, "again"); }), says("is none of welder L1's"));
    CHECK_THAT(yard.refusal([&] { back(seq + 1, "the retraction"); }), says("is none of welder L1's"));
    CHECK_THAT(yard.refusal([&] { back(1, "the welder"); }), says("is none of welder L1's"));
    // A number that was taken back is not given again.
    yard.coupon("Q-1", "2026-10-05");
    yard.qualify("Q-1");
    back(yard.book.welder_history("L1").back().seq, "granted by mistake");
    CHECK(yard.book.welder("L1").qualifications.empty());
    CHECK(yard.qualify("Q-1").value.held.at(0).record.number == 2);
}

TEST_CASE("nobody is enrolled twice unasked, by mark or by name", "[standing]") {
    Yard yard; // L1 is J. Reef
    const auto enrolled = [&](const WelderRequest &r) {
        return yard.write([&](Writing &w) { return enrol(w, r); });
    };
    for (const char *name : {"J. Reef", "Reef John", "j reef", "J. Reeff"}) {
        INFO(name);
        CHECK_THAT(yard.refusal([&] {
            enrolled({"T7", name, {}, {}, ""});
        }),
                   says("L1 is enrolled as 'J. Reef', which may be the same person"));
    }
    CHECK(enrolled({"T7", "B. Shore", {}, {}, ""}).value.sure.empty());
    CHECK(enrolled({"T8", {}, {}, {}, ""}).value.sure.empty()); // no name is like none
    CHECK_THAT(yard.refusal([&] {
        yard.write([](Writing &w) { return change_welder(w, {"T8", "J. Reef", {}, {}, "a slip"}); });
    }),
               says("which may be the same person"));
    CHECK(enrolled({"T9", "J. Reef", {}, {}, "", true}).value.sure ==
          std::vector<std::string>{"name-like-another"});
    // A number in a name tells two apart.
    enrolled({"A1", "Learner No11", {}, {}, ""});
    CHECK(enrolled({"A2", "Learner No12", {}, {}, ""}).value.sure.empty());
}

TEST_CASE("a use that is entered late revives nothing without a reason, and is told with one", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-01-10");
    yard.qualify("Q-1");
    CHECK(yard.validity(1).state == Validity::State::lapsed);
    const auto used = [&](const char *day, const char *why = "") {
        return yard.write([&](Writing &w) {
            return log_use(w, {"L1", "GTAW", parse_day(day), "frame", why});
        });
    };
    // One that is too old to keep it changes nothing, and is taken, with its reason.
    const auto early = used("2026-02-01", "the site book shows it");
    CHECK(early.value.event.override_why == "the site book shows it");
    CHECK(early.value.event.overridden.empty());
    REQUIRE(early.notes.size() == 1);
    CHECK_THAT(early.notes[0], says("alone this use revives nothing; the reason is kept with it"));
    CHECK(yard.validity(1).state == Validity::State::lapsed);
    CHECK_THAT(yard.refusal([&] { used("2026-06-30"); }),
               says("the use of 2026-06-30 was entered only on 2026-11-25, when it was lapsed already"));
    CHECK(yard.validity(1).state == Validity::State::lapsed);
    used("2026-06-30", "the log of the yard was found");
    const Validity now = yard.validity(1);
    CHECK(now.state == Validity::State::valid);
    CHECK_THAT(now.reason,
               says("used as of 2026-02-01 and 2026-06-30 by entries of 2026-11-25, when it was lapsed"));
    const auto held = held_by(yard.office, "L1", parse_day("2026-11-25"));
    REQUIRE(held.front().aside.size() == 1);
    CHECK(held.front().aside.front().why == "the log of the yard was found");
    // What follows it would have come too late without it.
    used("2026-07-01");
    const auto after = held_by(yard.office, "L1", parse_day("2026-11-25"));
    CHECK(after.front().validity.state == Validity::State::valid);
    CHECK(after.front().validity.by_late);
    REQUIRE(after.front().aside.size() == 1);
    CHECK(after.front().aside.front().why == "the log of the yard was found");
}

TEST_CASE("a use that a clock set back dates in time is late all the same", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-01-10");
    yard.qualify("Q-1"); // on 2026-11-25
    yard.outside.now = [] { return std::string("2026-06-30T09:00:00Z"); };
    yard.outside.today = [] { return parse_day("2026-06-30"); };
    yard.write([](Writing &w) { return log_use(w, {"L1", "GTAW", parse_day("2026-06-30"), "frame", ""}); });
    const Validity now = yard.validity(1);
    CHECK(now.state == Validity::State::lapsed);
    CHECK_THAT(now.reason, says("(the use of 2026-06-30 on 2026-06-30), it revives it only with a reason"));
}
