// What stood against a coupon on the record that it was exported from.
#include "catch.hpp"
#include "operations/exported.hpp"
#include "operations/failed_by.hpp"
#include "operations/finishing.hpp"
#include "operations/importing.hpp"
#include "operations/logging.hpp"
#include "operations/yard.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// But for how its welder is called there.
std::vector<std::string> kinds_of(Desk &desk, const std::string &mark) {
    std::vector<std::string> out;
    for (const auto &fact : desk.book.coupon(mark).record.before)
        if (fact.kind != CarriedFact::Kind::welder) out.emplace_back(id_of(fact.kind));
    return out;
}

using Kinds = std::vector<std::string>;

} // namespace

TEST_CASE("an export washes no coupon: what stood against it comes along by JSON, lines and tables") {
    Yard there;
    there.coupon("Q-1", "2026-10-05", false);
    there.change("Q-1", {{"welder", "L2"}});
    const std::string json = exported(there.office, {}).text;

    Yard here;
    std::vector<std::string> notes;
    import_into(here, json, {}, &notes);
    REQUIRE(notes.size() >= 1);
    CHECK_THAT(notes.front(), says("coupon Q-1: on the record that it comes from it was graded failed for "
                                   "class test coupon by tester on 2026-11-25: seen"));
    CHECK(kinds_of(here, "Q-1") == Kinds{"graded failed", "graded failed", "left behind"});
    for (const auto &[at, welder] : {std::pair{0, "L1"}, std::pair{1, "L2"}})
        CHECK(here.book.coupon("Q-1").record.before[static_cast<std::size_t>(at)].as.at("welder") == welder);
    // It goes on with it, and is not told twice.
    CHECK(exported(here.office, {}).text == json);

    Yard by_tables;
    for (const Sheet sheet : {Sheet::coupons, Sheet::exams, Sheet::indications})
        import_into(by_tables, exported(there.office, sheet).text, sheet);
    CHECK(exported(by_tables.office, {}).text == json);
}

TEST_CASE(
    "a failed test that is called practice goes along as a failed test, with the method that it failed by") {
    Yard there;
    there.coupon("Q-1", "2026-10-05", false);
    there.change("Q-1", {{"purpose", "practice"}});
    Yard here;
    import_into(here, exported(there.office, {}).text);
    const auto before = here.book.coupon("Q-1").record.before;
    REQUIRE(!before.empty());
    CHECK(before.front().methods ==
          failed_by(there.office, there.book.history("Q-1"), there.book.coupon("Q-1"), false).methods);
    here.coupon("Q-2", "2026-10-06", true);
    CHECK_THAT(refused_to_qualify(here, "Q-2"), says("coupon Q-1 failed on 2026-10-05"));
}

TEST_CASE("a coupon that failed elsewhere is asked about where it is graded and where it is to qualify",
          "[standing]") {
    Yard there;
    there.coupon("Q-1", "2026-10-05", false);
    Yard here;
    import_into(here, exported(there.office, {}).text);
    CHECK_THAT(here.refusal([&] {
        here.write([](Writing &w) { return grade_coupon(w, {"Q-1", true, "", {}}); });
    }),
               says("on the record that it comes from it was graded failed") && says("say why"));
    here.grade("Q-1", true);
    CHECK(here.book.coupon("Q-1").grade->after_turn);
    const std::string refused = refused_to_qualify(here, "Q-1");
    CHECK_THAT(refused, says("on the record that it comes from it was graded failed"));
    // The next test of its welder is a retest, until a reason sets aside that this one failed.
    here.coupon("Q-2", "2026-10-06");
    CHECK_THAT(refused_to_qualify(here, "Q-2"),
               says("coupon Q-1 failed on 2026-10-05: 2 coupons must pass, 1 did"));
    here.qualify("Q-1", "asme-ix", "the owner looked at the film");
    CHECK(here.book.welder("L1").qualifications.at(0).override_why == "the owner looked at the film");
    here.qualify("Q-2");
}

TEST_CASE(
    "a test whose crack was taken back elsewhere failed by the film that showed it, and by nothing else",
    "[standing]") {
    Yard there;
    there.coupon("Q-1", "2026-10-05", true, {}, {Exam::VT});
    const auto film = [&](const std::string &lines, std::optional<int> found) {
        there.write([&](Writing &w) {
            ExamRequest request;
            request.coupon = "Q-1";
            request.method = Exam::RT;
            request.examiner = "A. Field";
            request.level = "II";
            request.found = found;
            record_exam(w, request);
            if (lines.empty()) return;
            log_lines(w, {"Q-1", 2, lines, "line", true});
            finish_exam(w, {"Q-1", 2, {}, true});
        });
    };
    film("crack l 0.2 at 1 in", {});
    there.write([](Writing &w) { return withdraw_indication(w, "Q-1", 1, "an artefact"); });
    there.write([](Writing &w) { return withdraw_exam(w, "Q-1", 2, "shot again"); });
    film("", 0);
    const auto failed_by_here = [](Yard &yard) {
        const auto failed = standing_of(yard.office, "L1").failed;
        return failed.empty() ? std::vector<std::string>{} : failed.front().by;
    };
    CHECK(failed_by_here(there) == std::vector<std::string>{"RT"});
    Yard here;
    import_into(here, exported(there.office, {}).text);
    CHECK(failed_by_here(here) == std::vector<std::string>{"RT"});
}

TEST_CASE("bends that were said to have failed, practice and an earlier day come along", "[standing]") {
    Yard there;
    there.coupon("Q-1", "2026-10-05", true, {{"mechanical", "failed"}});
    there.change("Q-1", {{"mechanical", "passed"}});
    there.coupon("Q-2", "2026-10-05", true, {{"purpose", "practice"}});
    there.change("Q-2", {{"purpose", "test"}});
    there.coupon("Q-3", "2026-10-05");
    there.change("Q-3", {{"welded", "2026-10-04"}});
    there.change("Q-3", {{"welded", "2026-10-05"}});
    there.coupon("Q-4", "2026-10-06");
    Yard here;
    import_into(here, exported(there.office, {}).text);
    CHECK(kinds_of(here, "Q-1") == Kinds{"bends failed", "left behind"});
    CHECK(kinds_of(here, "Q-2") == Kinds{"practice", "left behind"});
    CHECK(kinds_of(here, "Q-3") == Kinds{"welded", "left behind"});
    CHECK(kinds_of(here, "Q-4").empty());
    // Why it was changed stood beside its verdict there, and has no entry here.
    CHECK_THAT(words_of(here.book.coupon("Q-1").record.before[1]),
               says("written beside it: the coupon, why: "));
    for (const char *mark : {"Q-1", "Q-2", "Q-3", "Q-4"}) here.grade(mark, true);
    CHECK_THAT(refused_to_qualify(here, "Q-1"), says("its mechanical tests were said to have failed before"));
    CHECK_THAT(refused_to_qualify(here, "Q-2"), says("for practice when it was first examined"));
    // Another coupon that is registered like it failed nothing.
    CHECK(exported(here.office, {}).text == exported(there.office, {}).text);
}

TEST_CASE("what stood against a coupon elsewhere is read strictly, and older files hold none of it") {
    Desk desk;
    const auto with = [&](const std::string &before) {
        return refusal_of(desk, file_of(R"([{"id": "T", "before": )" + before + "}]"));
    };
    CHECK_THAT(with(R"({})"), says("before: expected a list"));
    CHECK_THAT(with(R"([{"what": "gone"}])"), says("before: what: found 'gone', expected rejected"));
    CHECK_THAT(with(R"([{"what": "practice", "wat": "x"}])"), says("before: unknown key 'wat'"));
    CHECK_THAT(with(R"([{"what": "practice", "what": "practice"}])"), says("stands twice"));
    CHECK_THAT(with(R"([{"what": "welded"}])"), says("before: welded needs \"on\""));
    CHECK_THAT(with(R"([{"what": "failed beside", "as": {"welder": "L1"}}])"),
               says("before: failed beside needs \"coupon\""));
    CHECK_THAT(with(R"([{"what": "welded", "on": "soon"}])"), says("'soon'"));
    CHECK_THAT(
        with(R"([{"what": "graded failed", "as": {"sickness": "1"}, "by": "A. Field", "on": "2026-11-01"}])"),
        says("sickness"));
    CHECK_THAT(with(R"([{"what": "rejected", "as": {"class": "B"}, "by": "A. Field", "on": "2026-11-01"}])"),
               says("rejected needs \"changed\""));
    import_into(desk, file_of(R"([{"id": "T"}])"));
    CHECK(desk.book.coupon("T").record.before.empty());
}

TEST_CASE("an export in part tells of the tests that its welders failed and that it leaves out",
          "[standing]") {
    Yard there;
    there.coupon("Q-1", "2026-10-05", false);
    there.coupon("Q-2", "2026-10-06");
    there.coupon("Q-3", "2026-10-06", true, {{"welder", "L2"}});
    Selection accepted;
    accepted.grade = GradeState::passed;
    const std::string json = exported(there.office, {}, accepted).text;
    Yard here;
    import_into(here, json);
    CHECK(kinds_of(here, "Q-2") == Kinds{"failed beside"});
    CHECK(kinds_of(here, "Q-3").empty());
    here.grade("Q-2", true);
    CHECK_THAT(refused_to_qualify(here, "Q-2"),
               says("coupon elsewhere.Q-1 failed on 2026-10-05: 2 coupons must pass, 1 did"));
    const auto standing = standing_of(here.office, "L1");
    REQUIRE(standing.failed.size() == 1);
    CHECK(standing.failed[0].coupon == "elsewhere.Q-1");
    // It goes on with whatever of his leaves this record, too, and stands for itself once it comes.
    here.coupon("B-1", "2026-11-05");
    Yard third;
    import_into(third, exported(here.office, {}).text);
    CHECK(kinds_of(third, "B-1") == Kinds{"failed beside"});
    Selection failed;
    failed.grade = GradeState::failed;
    import_into(here, exported(there.office, {}, failed).text);
    REQUIRE(standing_of(here.office, "L1").failed.size() == 1);
    CHECK(standing_of(here.office, "L1").failed[0].coupon == "Q-1");
}

TEST_CASE("a failed test that was withdrawn is told of by the welder's others") {
    Yard there;
    there.coupon("Q-1", "2026-10-05", false);
    there.coupon("Q-2", "2026-10-06");
    there.write([](Writing &w) { return withdraw_coupon(w, "Q-1", "taken back"); });
    Yard here;
    import_into(here, exported(there.office, {}).text);
    CHECK(kinds_of(here, "Q-2") == Kinds{"failed beside"});
    CHECK(exported(here.office, {}).text == exported(there.office, {}).text);
}

TEST_CASE("a weld that was said to be younger than its exam goes along, and its exam counts nowhere") {
    Yard there;
    there.coupon("Q-1", "2026-10-05");
    there.change("Q-1", {{"welded", "2026-10-20"}});
    const std::string json = exported(there.office, {}).text;
    Yard here;
    import_into(here, json);
    CHECK_THAT(here.office.coupon("Q-1").exams.at(0).open, says("before the weld of 2026-10-20"));
    CHECK(exported(here.office, {}).text == json);
    Yard by_tables;
    for (const Sheet sheet : {Sheet::coupons, Sheet::exams})
        import_into(by_tables, exported(there.office, sheet).text, sheet);
    CHECK(exported(by_tables.office, {}).text == json);
}

TEST_CASE("what settings filled in stands with the coupon until somebody says it, and goes along") {
    Desk there;
    there.write([](Writing &w) {
        return register_coupon(
            w, {"T-1", {{"process", "GTAW"}, {"position", "6G"}}, false, {}, {"process", "position"}});
    });
    there.write([](Writing &w) {
        return change_coupon(w, {{"T-1", {{"position", "6G"}}}, {}, "asked him"});
    });
    Desk here;
    import_into(here, exported(there.office, {}).text);
    CHECK(here.book.coupon("T-1").record.by_settings == std::set<std::string>{"process"});
}
