#include "catch.hpp"
#include "operations/shortcoming_words.hpp"
#include "operations/yard.hpp"
#include "records/codecs/bodies.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::string refused_to_qualify(Yard &yard, const std::string &coupon, const std::string &rules = "asme-ix") {
    return yard.refusal([&] { yard.qualify(coupon, rules); });
}

Done<StandingChange> renewed(Yard &yard, int number, const std::vector<std::string> &coupons,
                             const std::string &override_why = "") {
    return yard.write([&](Writing &w) { return renew(w, {"L1", number, coupons, {}, override_why}); });
}

std::string refused_to_renew(Yard &yard, int number, const std::vector<std::string> &coupons) {
    return yard.refusal([&] { renewed(yard, number, coupons); });
}

/// One qualification by rules of two coupons for a renewal, lapsed since 2025-12-10.
void two_coupon_rules(Yard &yard) {
    write_file(yard.file("two.yaml"),
               "rules: two\ntitle: t\nedition: e\nunits: in\nvariables: [thickness]\n"
               "ranges: [{id: a, of: thickness, allows: same, clause: c, standing: {house: x}}]\n"
               "examinations: [{id: v, one of: [VT], clause: \"5\", standing: {house: x}}]\n"
               "validity: [{id: v, use every: 6 months, clause: c, standing: {house: x}}]\n"
               "renewal: {coupons: 2, clause: \"8\", standing: {house: x}}\n");
    yard.coupon("Q-1", "2025-06-10");
    yard.qualify("Q-1", yard.file("two.yaml"));
}

const std::vector<Exam> none;

} // namespace

TEST_CASE("a graded coupon qualifies its welder; what is missing is refused with the reason", "[standing]") {
    Yard yard;
    CHECK_THAT(refused_to_qualify(yard, "Q-1"), says("there is no coupon 'Q-1'"));
    yard.write([](Writing &w) { return register_coupon(w, {"Q-0", {}}); });
    CHECK_THAT(refused_to_qualify(yard, "Q-0"), says("names no welder"));
    yard.change("Q-0", {{"welder", "L9"}});
    CHECK_THAT(refused_to_qualify(yard, "Q-0"), says("there is no welder 'L9'"));
    yard.change("Q-0", {{"welder", "L1"}});
    CHECK_THAT(refused_to_qualify(yard, "Q-0"), says("only a coupon that was graded passed"));
    yard.coupon("Q-1", "2026-10-05");
    CHECK_THAT(refused_to_qualify(yard, "Q-1", "asme-9"), says("did you mean 'asme-ix'?"));
    CHECK_THAT(refused_to_qualify(yard, "Q-1", ""), says("by which rules?"));
    const Granted granted = yard.qualify("Q-1").value;
    REQUIRE(granted.held.size() == 1);
    CHECK(granted.mark == "L1");
    CHECK(title_of(granted.held[0]) == "#1 GTAW by asme-ix");
    CHECK(granted.held[0].validity.state == Validity::State::valid);
    CHECK(granted.held[0].record.range == beadbook::granted(granted.held[0].range));
    CHECK_THAT(refused_to_qualify(yard, "Q-1"), says("already, #1"));
    CHECK_THAT(refused_to_qualify(yard, "Q-1", "aws-d17.1"),
               says("metal group: 'P1' is not known to aws-d17.1"));
    const auto with = [&](const std::string &rules, const RuleWords &words, const std::string &way = "") {
        return yard.write([&](Writing &w) { return qualify(w, {"Q-1", rules, way, words, ""}); });
    };
    CHECK(with("aws-d17.1", {{"metal-group", "Ia"}}).value.held[0].record.number == 2);
    CHECK_THAT(yard.refusal([&] {
        with("mil-std-1595a", {{"position", "2G"}});
    }),
               says("says position '6G'"));
    yard.coupon("Q-9", "2026-10-05");
    CHECK_THAT(yard.refusal([&] {
        yard.write([](Writing &w) { return qualify(w, {"Q-9", "iso-9606-1", "d", {}, ""}); });
    }),
               says("iso-9606-1 knows a, b and c"));
}

TEST_CASE("what impedes a coupon is told at once, with what would mend it", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "", false, {{"welded", ""}, {"purpose", "practice"}, {"process", ""}});
    yard.change("Q-1", {{"mechanical", "failed"}});
    try {
        yard.qualify("Q-1", "asme-ix", "it must pass");
        FAIL("taken");
    } catch (const Refusal &e) {
        for (const char *part :
             {"was graded failed", "on which day was it welded?", "was welded for practice",
              "its mechanical tests failed", "by which process"})
            CHECK_THAT(e.what(), says(part));
        REQUIRE(e.remedies().size() == 2);
        CHECK(e.remedies()[0].operation == "change");
        CHECK(e.remedies()[0].fields == std::vector<std::string>{"welded", "why"});
    }
    yard.coupon("Q-2", "2026-11-25");
    yard.qualify("Q-2");
    yard.coupon("Q-3", "2026-11-26");
    CHECK_THAT(refused_to_qualify(yard, "Q-3"), says("which is to come"));
    CHECK(yard.book.welder("L1").qualifications.size() == 1);
}

TEST_CASE("examinations that the rules ask are demanded, and an override keeps its reason", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-10-05", true, {{"process", "GMAW"}, {"transfer", "short-circuit"}}, {Exam::VT});
    const std::string refused = refused_to_qualify(yard, "Q-1");
    CHECK_THAT(refused, says("no RT or mechanical tests"));
    CHECK_THAT(refused, says("QW-304"));
    CHECK_THAT(refused, !says("no VT"));
    const auto done = yard.qualify("Q-1", "asme-ix", "the contract waives the bends");
    CHECK(done.notes.empty());
    const QualificationRecord kept = yard.book.welder("L1").qualifications.at(0);
    CHECK(kept.override_why == "the contract waives the bends");
    CHECK(kept.overridden.size() == 3); // RT, bends, and a verdict that does not accept it
    REQUIRE(kept.evidence);
    CHECK(kept.evidence->coupon == "Q-1");
    CHECK(kept.evidence->against_verdict);
    CHECK(kept.evidence->exams.size() == 1);
    CHECK(kept.evidence->exams[0].level == "II");
    // A reason that was not needed is told, and not kept.
    yard.coupon("Q-2", "2026-10-05");
    const auto needless = yard.qualify("Q-2", "asme-ix", "just in case");
    REQUIRE(needless.notes.size() == 1);
    CHECK(needless.value.held[0].record.override_why.empty());
    // Rules that ask nothing say so.
    yard.coupon("Q-3", "2026-10-05", true, {{"metal-group", ""}}, none);
    CHECK_THAT(refused_to_qualify(yard, "Q-3", "mil-std-1595a"),
               says("no examination that counts is on record"));
    const auto silent = yard.qualify("Q-3", "mil-std-1595a", "the owner saw it").notes;
    REQUIRE(silent.size() == 2);
    CHECK_THAT(silent[0], says("asks for no examination of the test"));
    CHECK_THAT(silent[1], says("cannot be said in full without the test's metal group"));
}

TEST_CASE(
    "what the judge does not accept qualifies only by an override, and whose word it is stays on record",
    "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-10-05", true, {{"metal-group", ""}}, none);
    CHECK_THAT(
        refused_to_qualify(yard, "Q-1", "mil-std-1595a"),
        says("the verdict for class 3 is 'cannot say', and tester graded it passed on 2026-11-25: seen"));
    yard.qualify("Q-1", "mil-std-1595a", "the film is with the customer");
    CHECK(yard.validity(1).state == Validity::State::valid);
    const auto aside = yard.book.welder("L1").qualifications.at(0).overridden;
    REQUIRE(aside.size() == 2);
    CHECK(aside[0].kind == Shortcoming::Kind::verdict);
    CHECK(aside[1].kind == Shortcoming::Kind::not_examined);
    // One that is graded against its verdict only later says so as long as it is valid.
    yard.coupon("Q-2", "2026-10-06");
    yard.qualify("Q-2");
    CHECK_THAT(yard.validity(2).reason, !says("graded it passed"));
    yard.change("Q-2", {{"magnetic", "no"}});
    CHECK(yard.validity(2).state == Validity::State::in_doubt);
    yard.grade("Q-2", true);
    CHECK(yard.validity(2).state == Validity::State::valid);
    CHECK_THAT(yard.validity(2).reason,
               says("coupon Q-2: the verdict for class 3 is 'cannot say', and tester graded it passed on "
                    "2026-11-25: read again"));
}

TEST_CASE("an exam that does not count is none; each process is asked for its own", "[standing]") {
    Yard yard;
    yard.coupon("Q-2", "2026-10-06");
    yard.write([](Writing &w) {
        ExamRequest request;
        request.coupon = "Q-2";
        request.practice = "asme-v-vt";
        request.conditions = {"light=10 fc"};
        request.replaces = 1;
        request.why = "the light was measured";
        return record_exam(w, request);
    });
    CHECK_THAT(refused_to_qualify(yard, "Q-2"), says("no VT on record"));
    yard.qualify("Q-2", "asme-ix", "seen again by the owner");
    const auto kept = yard.book.welder("L1").qualifications.at(0);
    CHECK_THAT(kept.evidence->exams[0].incomplete, says("not valid"));

    yard.coupon(
        "Q-4", "2026-10-06", true,
        {{"process", "GTAW 0.05in + GMAW 0.1in"}, {"transfer", "short-circuit"}, {"filler-group", "F6"}});
    const std::string refused = refused_to_qualify(yard, "Q-4");
    CHECK_THAT(refused, says("GMAW: no mechanical tests"));
    CHECK_THAT(refused, !says("GTAW: "));
    CHECK(yard.qualify("Q-4", "asme-ix", "the bends follow").value.held.size() == 2);
    CHECK(yard.book.welder("L1").qualification(2)->override_why.empty());
    CHECK(yard.book.welder("L1").qualification(3)->override_why == "the bends follow");
}

TEST_CASE("after a failed test two coupons must pass, or one after training", "[standing]") {
    // ASME BPVC Section IX QW-321.2 (read: twice the coupons) and QW-321.3 (from memory).
    Yard yard;
    yard.coupon("Q-1", "2026-10-05", false);
    yard.coupon("Q-2", "2026-10-06");
    CHECK_THAT(refused_to_qualify(yard, "Q-2"),
               says("coupon Q-1 failed on 2026-10-05: 2 coupons must pass, 1 did [QW-321.2, read]"));
    // Another position is another kind of test.
    yard.coupon("Q-5", "2026-10-06", true, {{"position", "2G"}});
    yard.qualify("Q-5");
    yard.coupon("Q-3", "2026-10-06");
    const auto granted = yard.qualify("Q-3").value;
    CHECK(granted.held[0].record.number == 2);
    CHECK(granted.held[0].record.evidence->coupons == std::vector<std::string>{"Q-2", "Q-3"});

    Yard other;
    other.coupon("Q-1", "2026-10-05", false);
    other.write([](Writing &w) {
        return log_training(w, {"L1", "GTAW", parse_day("2026-10-08"), "root runs"});
    });
    other.coupon("Q-2", "2026-10-12");
    other.qualify("Q-2");
}

TEST_CASE("the coupon that passed with it must have been examined too, and bends that opened are a failure",
          "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-10-05", true, {{"mechanical", "failed"}}); // graded passed before the bends
    yard.coupon("Q-2", "2026-10-06", true, {}, {Exam::VT});
    yard.coupon("Q-3", "2026-10-07");
    const std::string refused = refused_to_qualify(yard, "Q-3");
    CHECK_THAT(refused, says("coupon Q-2: no RT or mechanical tests"));
    CHECK_THAT(refused, !says("must pass"));
}

TEST_CASE("a process that cannot be read names its coupon", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-10-05", false);
    CHECK_THAT(yard.refusal([&] { yard.change("Q-1", {{"process", "GTAW + "}}); }), says("a part is empty"));
    // Older programs took it.
    yard.write([](Writing &w) {
        CouponRecord record = w.coupon("Q-1").record;
        record.set("process", "GTAW + ");
        Entry e = codec::entry_of(record);
        e.supersedes = w.coupon("Q-1").record_seq;
        e.reason = "a slip";
        w.add(std::move(e));
    });
    yard.coupon("Q-2", "2026-10-06");
    CHECK_THAT(refused_to_qualify(yard, "Q-2"), says("coupon Q-1: process 'GTAW +': a part is empty"));
    CHECK_THAT(refused_to_qualify(yard, "Q-2"), says("cannot say whether this is a retest"));
    const auto done = yard.qualify("Q-2", "asme-ix", "Q-1 was for show");
    CHECK(done.value.held.at(0).record.overridden.at(0).kind == Shortcoming::Kind::unreadable);
}

TEST_CASE("a coupon that cannot be read leaves its own qualification in doubt and the others as they are",
          "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-10-05");
    yard.qualify("Q-1");
    yard.coupon("Q-2", "2026-10-06", true, {{"position", "2G"}});
    yard.qualify("Q-2");
    yard.write([](Writing &w) {
        Entry e;
        e.kind = "exam";
        e.subject = "Q-1";
        e.exam = 9;
        e.body = "{}";
        w.ledger().append([&] {
            e.at = w.stamp().at;
            e.who = w.stamp().who;
            return e;
        }());
    });
    const auto standing = standing_of(yard.office, "L1");
    REQUIRE(standing.held.size() == 2);
    CHECK(standing.held[0].validity.state == Validity::State::in_doubt);
    CHECK_THAT(standing.held[0].validity.reason, says("cannot say: coupon Q-1: an entry cannot be read"));
    CHECK(standing.held[1].validity.state == Validity::State::valid);
    CHECK(due(yard.office).items.at(0).to_do == ToDo::settle);
    yard.coupon("Q-3", "2026-10-07");
    CHECK_THAT(refused_to_qualify(yard, "Q-3"), says("coupon Q-1 cannot be read"));
}

TEST_CASE("what was set aside and what had failed are kept by kind, and come back", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-10-05", false);
    yard.coupon("Q-2", "2026-10-06");
    yard.qualify("Q-2", "asme-ix", "the owner agrees");
    const Entry entry = yard.book.welder_history("L1").back();
    CHECK(entry.body.find("must pass") == std::string::npos);
    CHECK(entry.body.find("failed on") == std::string::npos);
    const QualificationRecord kept = yard.book.welder("L1").qualifications.at(0);
    REQUIRE(kept.overridden.size() == 1);
    CHECK(kept.overridden[0].kind == Shortcoming::Kind::retest);
    CHECK(kept.overridden[0].asked == 2);
    CHECK(kept.overridden[0].given == 1);
    REQUIRE(kept.evidence->after);
    CHECK(kept.evidence->after->coupon == "Q-1");
    CHECK(words_of(*kept.evidence->after) == "coupon Q-1 failed on 2026-10-05");
    // Once it is settled, the next test is a new one.
    yard.coupon("Q-3", "2026-10-20");
    CHECK(yard.qualify("Q-3").value.held.at(0).record.overridden.empty());
}

TEST_CASE("practice coupons neither qualify nor count as failed tests", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-10-05", false, {{"purpose", "practice"}});
    yard.coupon("Q-2", "2026-10-06", true, {{"purpose", "practice"}});
    CHECK_THAT(refused_to_qualify(yard, "Q-2"), says("was welded for practice"));
    yard.coupon("Q-3", "2026-10-07", true, {{"purpose", "test"}});
    yard.qualify("Q-3");
}

TEST_CASE("tests of another welder say nothing", "[standing]") {
    Yard yard;
    yard.coupon("Q-2", "2026-10-06", false, {{"welder", "L2"}});
    yard.coupon("Q-3", "2026-10-07");
    yard.qualify("Q-3");
}

TEST_CASE("a coupon that is described otherwise afterwards puts in doubt what it proves", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-10-05", true, {{"position", "3G"}});
    yard.qualify("Q-1");
    yard.change("Q-1", {{"note", "kept in the rack"}});
    const auto standing = [&] { return held_by(yard.office, "L1", parse_day("2026-11-25")).at(0).validity; };
    CHECK(standing().state == Validity::State::valid);
    yard.change("Q-1", {{"position", "1G"}});
    CHECK(standing().state == Validity::State::in_doubt);
    CHECK_THAT(standing().reason, says("coupon Q-1 is described otherwise since: position 3G is now 1G"));
    yard.change("Q-1", {{"position", "3G"}});
    CHECK(standing().state == Validity::State::valid);
}

TEST_CASE("a failed test stays one, of whom and by what it was when it failed", "[standing]") {
    for (const auto &[field, value] : {std::pair{"welder", "L2"}, std::pair{"process", "GTAW"}}) {
        INFO(field);
        Yard yard;
        yard.coupon("Q-1", "2026-10-05", false, {{"process", "SMAW"}});
        yard.change("Q-1", {{field, value}});
        yard.coupon("Q-3", "2026-10-07", true, {{"process", "SMAW"}});
        CHECK_THAT(refused_to_qualify(yard, "Q-3"), says("coupon Q-1 failed on 2026-10-05"));
    }
}

TEST_CASE("a lapsed qualification comes back by one coupon, where its rules say so", "[standing]") {
    // QW-322.2(a): one coupon (read), which restores all ranges of the process (from memory).
    Yard yard;
    yard.coupon("Q-1", "2025-06-10");
    yard.qualify("Q-1");
    CHECK_THAT(refused_to_renew(yard, 1, {"Q-1"}), says("was welded on 2025-06-10, before it lapsed"));
    yard.coupon("Q-2", "2026-11-20", true, {{"position", "1G"}});
    const auto done = renewed(yard, 1, {"Q-2"});
    CHECK(done.value.now.validity.state == Validity::State::valid);
    CHECK(done.value.now.validity.until == parse_day("2027-05-20"));
    CHECK(done.value.event.evidence.at(0).coupon == "Q-2");
    CHECK(done.value.event.seq > 0);
    CHECK_THAT(refused_to_renew(yard, 1, {"Q-2"}), says("is valid, not lapsed"));
    yard.coupon("Q-3", "2021-06-10", true, {{"metal-group", ""}});
    yard.qualify("Q-3", "mil-std-1595a");
    CHECK_THAT(refused_to_renew(yard, 2, {"Q-2"}), says("nothing renews"));
    CHECK_THAT(yard.refusal([&] { renewed(yard, 1, {}); }), says("by which coupon?"));
}

TEST_CASE("renewal refuses what qualification refuses", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2025-06-10");
    yard.qualify("Q-1");
    yard.coupon("P-1", "2026-11-20", true, {{"purpose", "practice"}});
    CHECK_THAT(refused_to_renew(yard, 1, {"P-1"}), says("was welded for practice"));
    yard.coupon("B-1", "2026-11-20", true, {{"mechanical", "failed"}, {"position", "1G"}});
    CHECK_THAT(refused_to_renew(yard, 1, {"B-1"}), says("its mechanical tests failed"));
    yard.coupon("F-1", "2026-11-20", false, {{"position", "2G"}});
    CHECK_THAT(refused_to_renew(yard, 1, {"F-1"}), says("was graded failed"));
    yard.coupon("D-1", "2026-11-26", true, {{"position", "5G"}});
    CHECK_THAT(refused_to_renew(yard, 1, {"D-1"}), says("which is to come"));
    yard.coupon("L-1", "2026-11-20", true, {{"welder", "L2"}});
    CHECK_THAT(refused_to_renew(yard, 1, {"L-1"}), says("was not welded by L1"));
    yard.coupon("S-1", "2026-11-20", true, {{"process", "SMAW"}, {"filler-group", "F4"}});
    CHECK_THAT(refused_to_renew(yard, 1, {"S-1"}), says("was welded with 'SMAW', not with GTAW"));
    CHECK_THAT(refused_to_renew(yard, 1, {"P-1", "B-1", "P-1"}), says("coupon P-1 is given twice"));

    yard.coupon("E-1", "2026-11-20", true,
                {{"form", "plate"}, {"seam", ""}, {"diameter", ""}, {"position", "3G"}}, {Exam::VT});
    CHECK_THAT(refused_to_renew(yard, 1, {"E-1"}), says("no RT or mechanical tests"));
    const auto done = renewed(yard, 1, {"E-1"}, "the film is with the customer");
    CHECK(done.value.now.validity.state == Validity::State::valid);
    const WelderEvent kept = yard.book.welder("L1").events.back();
    CHECK(kept.override_why == "the film is with the customer");
    REQUIRE(kept.overridden.size() == 2);
    CHECK(kept.overridden.at(0).kind == Shortcoming::Kind::verdict);
    CHECK(kept.overridden.at(1).kind == Shortcoming::Kind::exam);
    CHECK(kept.overridden.at(1).rule == "inside");
    const auto said = words_of(kept.overridden, shipped_range_rules("asme-ix").get());
    CHECK_THAT(said.at(0), says("the verdict for class 3 is 'cannot say'"));
    CHECK_THAT(said.at(1), says("no RT or mechanical tests"));
}

TEST_CASE("any process of the coupon renews its own", "[standing]") {
    Yard yard;
    const Yard::Fields both{{"process", "GTAW 0.05in + SMAW 0.1in"}, {"filler-group", "F6 + F4"}};
    yard.coupon("Q-1", "2025-06-10", true, both);
    yard.qualify("Q-1");
    yard.coupon("Q-2", "2026-11-20", true, both);
    CHECK(renewed(yard, 2, {"Q-2"}).value.now.validity.state == Validity::State::valid);
    CHECK(yard.validity(1).state == Validity::State::lapsed);
    CHECK(renewed(yard, 1, {"Q-2"}).value.now.validity.state == Validity::State::valid);
}

TEST_CASE("as many coupons renew as the rules ask", "[standing]") {
    Yard yard;
    two_coupon_rules(yard);
    yard.coupon("Q-2", "2026-11-10", true, {{"position", "1G"}});
    yard.coupon("Q-3", "2026-11-20", true, {{"position", "2G"}});
    CHECK_THAT(refused_to_renew(yard, 1, {"Q-2"}), says("2 coupons renew it, 1 is given [8, house]"));
    const auto done = renewed(yard, 1, {"Q-3", "Q-2"});
    CHECK(done.value.event.day == parse_day("2026-11-20"));
    CHECK(done.value.event.evidence.size() == 2);
    CHECK_THAT(done.value.event.text, says("coupons Q-3 and Q-2"));
}

TEST_CASE("after a coupon that failed, a renewal takes the two that the retest rules ask", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2025-06-10");
    yard.qualify("Q-1");
    yard.coupon("R-1", "2026-10-05", false);
    yard.coupon("R-2", "2026-10-06");
    CHECK_THAT(refused_to_renew(yard, 1, {"R-2"}), says("2 coupons must pass, 1 did"));
    yard.coupon("R-3", "2026-10-07");
    renewed(yard, 1, {"R-2", "R-3"});
}

TEST_CASE("what a coupon proved is proved no longer when it is graded failed or corrected", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2025-06-10");
    yard.qualify("Q-1");
    yard.coupon("Q-2", "2026-11-20", true, {{"position", "1G"}});
    renewed(yard, 1, {"Q-2"});
    CHECK(yard.validity(1).state == Validity::State::valid);
    yard.grade("Q-2", false);
    CHECK(yard.validity(1).state == Validity::State::lapsed);
    const auto standing = standing_of(yard.office, "L1");
    REQUIRE(standing.undone.size() == 1);
    CHECK(standing.undone.begin()->first == standing.welder.events.back().seq);
    CHECK_THAT(standing.undone.begin()->second, says("coupon Q-2 was graded failed on 2026-11-25"));

    yard.coupon("Q-3", "2026-10-05", true, {{"position", "2G"}});
    yard.qualify("Q-3");
    SECTION("graded failed") {
        yard.grade("Q-3", false);
        CHECK(yard.validity(2).reason == "coupon Q-3 was graded failed on 2026-11-25");
    }
    SECTION("its bends opened") {
        yard.change("Q-3", {{"mechanical", "failed"}});
        CHECK_THAT(yard.validity(2).reason, says("mechanical tests of coupon Q-3 failed"));
    }
    SECTION("it was another's") {
        yard.change("Q-3", {{"welder", "L2"}});
        CHECK_THAT(yard.validity(2).reason, says("is said now to be welded by L2"));
    }
    CHECK(yard.validity(2).state == Validity::State::revoked);
    CHECK(due(yard.office, 36500).items.size() == 1); // only the one that lapsed
}

TEST_CASE("carried in only with a paper, which is kept", "[standing]") {
    Yard yard;
    CarryRequest request{"L1",
                         "iso-9606-1",
                         "b",
                         {{"units", "mm"},
                          {"process", "141"},
                          {"joint", "groove"},
                          {"form", "tube"},
                          {"position", "H-L045"},
                          {"weld-thickness", "4"},
                          {"diameter", "89"},
                          {"welded", "2025-12-01"}},
                         {}};
    const auto carried = [&] { return yard.write([&](Writing &w) { return carry(w, request); }); };
    CHECK_THAT(yard.refusal([&] { carried(); }), says("with its paper"));
    request.paper = {"paper.pdf", ""};
    CHECK_THAT(yard.refusal([&] { carried(); }), says("1 byte to 16 MiB"));
    request.paper.bytes = std::string("%PDF\0bytes", 10);
    const auto good = request;
    const auto refused_with = [&](const std::string &field, const std::string &value) {
        request = good;
        if (value.empty())
            request.test.erase(field);
        else
            request.test[field] = value;
        return yard.refusal([&] { carried(); });
    };
    CHECK_THAT(refused_with("welded", ""), says("on which day"));
    CHECK_THAT(refused_with("welded", "2026-12-01"), says("which is to come"));
    CHECK_THAT(refused_with("purpose", "practice"), says("was welded for practice"));
    CHECK_THAT(refused_with("mechanical", "failed"), says("its mechanical tests failed"));
    CHECK_THAT(refused_with("process", ""), says("by which process"));
    CHECK_THAT(refused_with("welder", "L2"), says("said to be welded by L2, not by L1"));
    CHECK_THAT(refused_with("position", "9Z"), says("'9Z' is not known; expected PA, PB"));
    request = good;
    const Granted granted = carried().value;
    CHECK(title_of(granted.held.at(0)) == "#1 141 by iso-9606-1");
    CHECK_FALSE(granted.held[0].record.evidence);
    const auto paper = yard.book.ledger().document(granted.held[0].record.document);
    REQUIRE(paper);
    CHECK(paper->bytes == good.paper.bytes);
    CHECK_THAT(yard.refusal([&] { carried(); }), says("carried in already, #1"));
}
