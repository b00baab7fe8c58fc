#include "catch.hpp"
#include "operations/shortcoming_words.hpp"
#include "operations/yard.hpp"
#include "records/codecs/bodies.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

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
    const auto with = [&](const std::string &rules, const RuleWords &words, const std::string &why = "") {
        return yard.write([&](Writing &w) { return qualify(w, {"Q-1", rules, "", words, why}); });
    };
    // D17.1-01-I01: a test weld makes class A of D17.1; other criteria say nothing of that.
    CHECK_THAT(yard.refusal([&] {
        with("aws-d17.1", {{"metal-group", "Ia"}});
    }),
               says("graded by asme-ix-tests, class test coupon; by aws-d17.1 a test weld is accepted by "
                    "aws-d17.1, class A"));
    const auto aside = with("aws-d17.1", {{"metal-group", "Ia"}}, "the contract names Table III").value.held;
    CHECK(aside[0].record.number == 2);
    REQUIRE(aside[0].record.overridden.size() == 1);
    CHECK(aside[0].record.overridden[0].kind == Shortcoming::Kind::accepted_by);
    CHECK(aside[0].record.overridden[0].criteria == "asme-ix-tests");
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
    yard.coupon("Q-3", "2026-10-05", true, {{"metal-group", ""}}, none);
    CHECK_THAT(refused_to_qualify(yard, "Q-3", "mil-std-1595a"),
               says("no examination that counts is on record"));
    const auto silent = yard.qualify("Q-3", "mil-std-1595a", "the owner saw it").notes;
    REQUIRE(silent.size() == 1);
    CHECK_THAT(silent[0], says("cannot be said in full without the test's metal group"));
}

TEST_CASE(
    "what the judge does not accept qualifies only by an override, and whose word it is stays on record",
    "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-10-05", true, {{"metal-group", ""}}, none);
    CHECK_THAT(refused_to_qualify(yard, "Q-1", "mil-std-1595a"),
               says("the verdict for class test coupon is 'cannot say', and tester graded it passed on "
                    "2026-11-25: seen"));
    yard.qualify("Q-1", "mil-std-1595a", "the film is with the customer");
    CHECK(yard.validity(1).state == Validity::State::valid);
    const auto aside = yard.book.welder("L1").qualifications.at(0).overridden;
    REQUIRE(aside.size() == 2);
    CHECK(aside[0].kind == Shortcoming::Kind::verdict);
    CHECK(aside[1].kind == Shortcoming::Kind::not_examined);
    // One that is graded against its verdict only later would not qualify anew.
    yard.coupon("Q-2", "2026-10-06", true, {{"criteria", "mil-hdbk-1890-table-3"}, {"class", "3"}});
    yard.qualify("Q-2", "mil-std-1595a");
    yard.change("Q-2", {{"magnetic", "no"}});
    CHECK(yard.validity(2).state == Validity::State::in_doubt);
    yard.grade("Q-2", true);
    CHECK(yard.validity(2).state == Validity::State::in_doubt);
    CHECK_THAT(yard.validity(2).reason, says("coupon Q-2 would not qualify today: the verdict for class 3 is "
                                             "'cannot say', and tester graded it passed on "
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

    yard.coupon("Q-4", "2026-10-06", true,
                {{"process", "GTAW 0.05in + GMAW 0.1in"},
                 {"transfer", "short-circuit"},
                 {"filler-group", "F6 + F6"}});
    const std::string refused = refused_to_qualify(yard, "Q-4");
    CHECK_THAT(refused, says("GMAW: no mechanical tests"));
    CHECK_THAT(refused, !says("GTAW: "));
    CHECK(yard.qualify("Q-4", "asme-ix", "the bends follow").value.held.size() == 2);
    CHECK(yard.book.welder("L1").qualification(2)->override_why.empty());
    CHECK(yard.book.welder("L1").qualification(3)->override_why == "the bends follow");
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

TEST_CASE("what is told to settle such a doubt settles it", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-10-05", true, {{"position", "3G"}});
    yard.qualify("Q-1");
    const std::int64_t granted = yard.book.welder("L1").entries.at(1);
    const std::string entry = "retract entry " + std::to_string(granted) + " of welder L1";
    const auto taken_back = [&] {
        yard.write([&](Writing &w) { return retract(w, "L1", granted, "another position"); });
    };
    SECTION("the grade is of the weld as it was described") {
        yard.change("Q-1", {{"position", "1G"}});
        CHECK_THAT(yard.validity(1).reason,
                   says("if it is so, grade it again, then " + entry + " and qualify it anew"));
        yard.grade("Q-1", true);
        CHECK_THAT(yard.validity(1).reason, says("if it is so, " + entry + " and qualify it anew"));
        taken_back();
        yard.qualify("Q-1");
        CHECK(yard.validity(2).state == Validity::State::valid);
    }
    SECTION("nothing qualifies by it any more") {
        yard.change("Q-1", {{"filler-group", "F3, F6"}});
        CHECK_THAT(yard.validity(1).reason,
                   says("if it is so, " + entry + "; it does not qualify anew so: "));
        taken_back();
        CHECK_FALSE(refused_to_qualify(yard, "Q-1").empty());
    }
}

TEST_CASE("a word that was said beside the coupon for the grant is no doubt once the coupon says it",
          "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-10-05", true, {{"position", ""}});
    yard.write([](Writing &w) { return qualify(w, {"Q-1", "asme-ix", "", {{"position", "3G"}}, ""}); });
    yard.change("Q-1", {{"position", "3G"}});
    CHECK(yard.validity(1).state == Validity::State::valid);
    yard.change("Q-1", {{"position", "6G"}});
    CHECK(yard.validity(1).state == Validity::State::in_doubt);
    CHECK_THAT(yard.validity(1).reason, says("position not told is now 6G"));
}

TEST_CASE("what a coupon proved is proved no longer when it is graded failed or corrected", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2025-06-10");
    yard.qualify("Q-1");
    yard.coupon("Q-2", "2026-11-20", true, {{"position", "1G"}});
    yard.coupon("Q-3", "2026-10-05", true, {{"position", "2G"}});
    renewed(yard, 1, {"Q-2"});
    CHECK(yard.validity(1).state == Validity::State::valid);
    yard.grade("Q-2", false);
    CHECK(yard.validity(1).state == Validity::State::lapsed);
    const auto standing = standing_of(yard.office, "L1");
    REQUIRE(standing.undone.size() == 1);
    CHECK(standing.undone.begin()->first == standing.welder.events.back().seq);
    CHECK_THAT(standing.undone.begin()->second, says("coupon Q-2 was graded failed on 2026-11-25"));

    yard.qualify("Q-3");
    bool failed_here = true;
    SECTION("graded failed") {
        yard.grade("Q-3", false);
        CHECK(yard.validity(2).reason == "coupon Q-3 was graded failed on 2026-11-25");
    }
    SECTION("its bends opened") {
        yard.change("Q-3", {{"mechanical", "failed"}});
        CHECK_THAT(yard.validity(2).reason, says("mechanical tests of coupon Q-3 failed"));
    }
    SECTION("it was another's") {
        failed_here = false;
        yard.change("Q-3", {{"welder", "L2"}});
        CHECK_THAT(yard.validity(2).reason, says("is said now to be welded by L2"));
    }
    CHECK(yard.validity(2).state == Validity::State::unproved); // nobody revoked it
    const DueList all = due(yard.office, 36500);
    CHECK(all.items.size() == 2); // it and the one that lapsed
    for (const auto &item :
         all.items) // another's failure asks nothing of L1; QW-321.2, read: twice the coupons
        if (item.to_do == ToDo::test) CHECK(item.coupons == (failed_here ? 2 : 0));
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
    request.paper.bytes = "n/a\n";
    CHECK_THAT(yard.refusal([&] { carried(); }), says("nothing stands in it that shows a test"));
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

    // The same paper under another name, for another welder.
    yard.write([](Writing &w) { return enrol(w, {"L2", "B. Weir", {}, {}, "", false}); });
    request.mark = "L2";
    request.paper.name = "copy.pdf";
    CHECK_THAT(yard.refusal([&] { carried(); }),
               says("carried in for welder L1") && says("#1; does it name L2 as well?"));
    request.sure = true;
    const Granted list = carried().value;
    CHECK(list.held.at(0).record.test.sure == std::vector<std::string>{"paper-of-another"});
    CHECK(yard.book.welder("L2").qualifications.at(0).test.sure ==
          std::vector<std::string>{"paper-of-another"});
}
