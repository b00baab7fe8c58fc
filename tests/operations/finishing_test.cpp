#include "operations/finishing.hpp"

#include "booth.hpp"
#include "catch.hpp"
#include "operations/people.hpp"
#include "report/exam_words.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

ExamRecord finished(Booth &booth, int exam, std::optional<int> found, bool as_logged = false) {
    return booth.write(
                    [&](Writing &w) {
                        return finish_exam(w, {"T-1", exam, found, as_logged});
                    },
                    "J. Quay")
        .value;
}

Refusal refused(Booth &booth, int exam, std::optional<int> found, bool as_logged = false) {
    return booth.refusal([&] { finished(booth, exam, found, as_logged); });
}

} // namespace

TEST_CASE("an exam is finished by a person who says how many finds it has, or none") {
    Booth booth;
    booth.coupon();
    booth.exam(Exam::RT);
    const Refusal unsaid = refused(booth, 0, {});
    CHECK_THAT(unsaid.what(), says("how many did exam 1 find? a number, or none"));
    CHECK(field_of(unsaid) == "give found");
    CHECK(unsaid.kind() == Refusal::Kind::request);
    booth.log("gas pore 0.02 at 2\ngas pore 0.03 at 4");
    for (const int wrong : {0, 1, 3}) {
        const Refusal other = refused(booth, 1, wrong);
        CHECK_THAT(other.what(),
                   says("said to have found " + std::to_string(wrong) + ", and 2 are on record under it"));
        CHECK(field_of(other) == "found");
    }
    const ExamRecord done = finished(booth, 0, 2);
    REQUIRE(done.finished);
    CHECK(done.finished->found == 2);
    CHECK(done.finished->by == "J. Quay");
    CHECK(print(done.finished->on.value()) == "2026-11-25");
    CHECK(done.open.empty());
    const Refusal again = refused(booth, 1, 2);
    CHECK_THAT(again.what(), says("exam 1 of coupon T-1 is finished already"));
    CHECK(remedies_of(again) == "reopen T-1 1 why");
    CHECK_THAT(refused(booth, 0, 2).what(), says("coupon T-1 has no open exam"));
}

TEST_CASE("an exam whose note reads like a find is asked about where it is finished with none") {
    Booth booth;
    booth.coupon();
    booth.exam(Exam::RT, [](ExamRequest &exam) { exam.note = "crack at 3"; });
    const auto finish = [&](bool sure) {
        FinishRequest request{"T-1", 1, 0};
        request.sure = sure;
        booth.write([&](Writing &w) { return finish_exam(w, request); });
    };
    SECTION("by its number") { CHECK_THROWS_AS(finish(false), Unsure); }
    SECTION("as it is logged") { CHECK_THROWS_AS(finished(booth, 1, {}, true), Unsure); }
    SECTION("by a line that is logged") {
        LogRequest request{"T-1", 0, "RT none"};
        request.may_finish = true;
        CHECK_THROWS_WITH(booth.write([&](Writing &w) { return log_lines(w, request); }),
                          says("reads like a find"));
    }
    finish(true);
    CHECK(booth.office.coupon("T-1").needed_exam(1).sure == std::vector<std::string>{"note-like-a-find"});
    // What was answered is not asked of again.
    booth.reopen(1);
    finish(false);
    // Nor where it is taken to; what was not asked here is asked there.
    booth.reopen(1);
    booth.log("crack 0.2 at 3", "T-1", 1);
    booth.finish(1);
}

TEST_CASE("which exam is finished must be clear") {
    Booth booth;
    booth.coupon();
    for (const Exam method : {Exam::VT, Exam::RT, Exam::MT}) booth.exam(method);
    booth.log("undercut d 0.01 l 0.2 at 1", "T-1", 1);
    const Refusal which = refused(booth, 0, 0);
    CHECK_THAT(which.what(), says("coupon T-1 has open: 1 (VT), 2 (RT) and 3 (MT)"));
    CHECK(field_of(which) == "exam");
    CHECK(finished(booth, 1, {}, true).finished->found == 1); // as many as are on record under that one
    CHECK(finished(booth, 3, 0).number == 3);
    CHECK(finished(booth, 0, 0).number == 2);
    CHECK_THAT(refused(booth, 9, 0).what(), says("has no exam 9"));
}

TEST_CASE("nobody finishes an exam without an examiner") {
    Booth booth;
    booth.coupon();
    const auto nobody = [](ExamRequest &r) { r.examiner.clear(); };
    booth.exam(Exam::RT, nobody);
    const Refusal unnamed = refused(booth, 1, 0);
    CHECK_THAT(unnamed.what(), says("an exam is finished by a named examiner"));
    CHECK(field_of(unnamed) == "give examiner");
    CHECK(field_of(booth.refusal([&] {
              booth.exam(Exam::VT, [&](ExamRequest &r) {
                  nobody(r);
                  r.found = 0;
              });
          })) == "give examiner");
}

TEST_CASE("an open exam makes no coupon accepted, and one that is opened again neither") {
    Booth booth;
    booth.coupon("T-1", {{"class", "1"}});
    booth.exams();
    CHECK(booth.verdict() == Verdict::cannot_say);
    finished(booth, 3, 0);
    CHECK(booth.verdict() == Verdict::accept);
    const auto reopened = [&](int exam, const std::string &why) {
        return booth.write([&](Writing &w) { return reopen_exam(w, "T-1", exam, why); }).value;
    };
    CHECK(field_of(booth.refusal([&] { reopened(3, " "); })) == "give why");
    CHECK_THAT(booth.refusal([&] { reopened(9, "slip"); }).what(), says("has no exam 9"));
    CHECK_FALSE(reopened(3, "one more look").finished);
    CHECK(booth.verdict() == Verdict::cannot_say);
    CHECK_THAT(booth.refusal([&] { reopened(3, "slip"); }).what(), says("exam 3 is open"));
    finished(booth, 3, 0);
    CHECK(booth.verdict() == Verdict::accept);
    CHECK(booth.book.history("T-1").back().supersedes.has_value());
}

TEST_CASE("open exams from before exams were finished are finished as they are logged, for a reason") {
    Booth booth;
    booth.coupon("T-1");
    booth.exams("T-1");
    booth.log("gas pore 0.02 at 2");
    booth.coupon("T-2");
    booth.exam(
        Exam::VT, [](ExamRequest &r) { r.examiner.clear(); }, "T-2");
    booth.exam(Exam::MT, {}, "T-2");
    const auto all = [&](const std::string &why) {
        return booth.write([&](Writing &w) { return finish_all(w, why); });
    };
    CHECK(field_of(booth.refusal([&] { all(""); })) == "give why");
    // Nothing shows yet that an older program made the record.
    const auto none = all("a record of before");
    CHECK(none.value == 0);
    REQUIRE(none.notes.size() == 3);
    CHECK_THAT(none.notes[0],
               says("coupon T-1, exam 3 (RT) stays open: nothing shows that it was recorded before"));
    booth.write([](Writing &w) {
        Entry verdict;
        verdict.kind = "verdict";
        verdict.subject = "T-2";
        verdict.body = R"({"criteria":{"set":"mil-hdbk-1890-table-3","hash":"0"},"classes":[]})";
        return w.add(verdict);
    });
    booth.exam(Exam::RT, {}, "T-2");
    const auto done = all("a record of before");
    CHECK(done.value == 2);
    REQUIRE(done.notes.size() == 2);
    CHECK_THAT(done.notes[0], says("coupon T-2, exam 1 stays open: who examined?"));
    CHECK_THAT(done.notes[1], says("coupon T-2, exam 3 (RT) stays open: nothing shows"));
    CHECK(booth.office.coupon("T-1").needed_exam(3).finished->found == 1);
    CHECK(booth.office.coupon("T-1").needed_exam(3).finished->by == "tester");
    CHECK_FALSE(booth.office.coupon("T-2").needed_exam(1).finished);
    CHECK(booth.book.history("T-1").back().reason == "a record of before");
    CHECK(all("once more").value == 0);
}

TEST_CASE("who signed in finishes his own exams, and a keeper those of others for a reason", "[sign-in]") {
    Booth booth;
    booth.coupon();
    booth.exam(Exam::VT);
    PersonRequest keeper;
    keeper.name = "K. Chest";
    keeper.roles = {"keeper"};
    booth.write([&](Writing &w) { write_person(w, keeper); });
    const auto signed_in = [&](const std::string &who, const std::string &why = "") {
        Writing writing(booth.office, who, Writing::Known::by_sign_in);
        FinishRequest request{"T-1", 1, 0};
        request.why = why;
        finish_exam(writing, request);
        commit(writing);
    };
    const auto said = [&](const std::string &who, const std::string &why = "") {
        return std::string(booth.refusal([&] { signed_in(who, why); }).what());
    };
    CHECK_THAT(said("B. Shore", "he is away"),
               says("is said by A. Field, its examiner, and not by B. Shore"));
    CHECK_THAT(said("K. Chest"), says("a keeper finishes it in his stead for a reason"));
    signed_in("K. Chest", "he is away");
    const ExamRecord exam = booth.office.coupon("T-1").needed_exam(1);
    CHECK(exam.finished->by == "K. Chest");
    CHECK(exam.finished->why == "he is away");
    CHECK_THAT(finished_words(exam), says("finished by K. Chest") && says("(the reason: he is away)"));
    CHECK_THAT(booth.book.history("T-1").back().reason, says("he is away"));
    booth.reopen(1);
    signed_in("Field, A.");
    CHECK(booth.office.coupon("T-1").needed_exam(1).finished->by == "Field, A.");
    CHECK(booth.office.coupon("T-1").needed_exam(1).finished->why.empty());
    // The same by an entry in its place.
    ExamRequest again;
    again.coupon = "T-1";
    again.method = Exam::VT;
    again.examiner = "A. Field";
    again.level = "II";
    again.found = 0;
    again.replaces = 1;
    CHECK_THAT(booth
                   .refusal([&] {
                       Writing writing(booth.office, "B. Shore", Writing::Known::by_sign_in);
                       ExamRequest by_another = again;
                       by_another.why = "the light was read anew";
                       record_exam(writing, by_another);
                   })
                   .what(),
               says("is said by A. Field, its examiner"));
}

TEST_CASE("as logged is no word for none where a person says it") {
    Booth booth;
    booth.coupon();
    booth.exam(Exam::VT);
    FinishRequest request{"T-1", 1, {}, true};
    request.some_logged = true;
    const Refusal refused =
        booth.refusal([&] { booth.write([&](Writing &w) { return finish_exam(w, request); }); });
    CHECK_THAT(refused.what(), says("none was logged under exam 1 (VT) of coupon T-1"));
    CHECK(remedies_of(refused) == "log T-1 VT ...; finish T-1 1 found");
    booth.log("pore 0.01 at 1", "T-1", 1);
    booth.write([&](Writing &w) { return finish_exam(w, request); });
    CHECK(booth.book.coupon("T-1").exams.at(0).finished->found == 1);
}
