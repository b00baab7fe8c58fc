// A criteria file that somebody changed under the same edition, after verdicts and grades went by it.
#include "case.hpp"
#include "catch.hpp"
#include "operations/coupons.hpp"
#include "operations/desk.hpp"
#include "operations/examining.hpp"
#include "operations/exported.hpp"
#include "operations/finishing.hpp"
#include "operations/grade_standing.hpp"
#include "operations/grading_many.hpp"
#include "operations/logging.hpp"
#include "operations/looking_back.hpp"
#include "operations/qualifying.hpp"
#include "operations/turned.hpp"
#include "operations/welders.hpp"
#include "records/codecs/verdict.hpp"
#include "render/text.hpp"
#include "report/judgement_document.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// A coupon with a pore of 0.05 in, graded passed for class A, and the file that it went by.
class GradedByFile : public Desk {
public:
    explicit GradedByFile(const std::string &at_most = "0.06 in", bool judged = true, bool finished = true) {
        limit(at_most);
        write([&](Writing &w) {
            register_coupon(w, {"T-1",
                                {{"criteria", own_},
                                 {"class", "A"},
                                 {"joint", "groove"},
                                 {"material", "steel"},
                                 {"process", "GTAW"},
                                 {"thickness", "0.25 in"},
                                 {"weld-length", "8 in"}}});
            ExamRequest exam;
            exam.coupon = "T-1";
            exam.examiner = "A. Field";
            exam.level = "II";
            record_exam(w, exam);
            log_lines(w, {.coupon = "T-1", .text = "pore 0.05 at 1\n"});
            if (finished) finish_in(w);
            if (judged) judge_and_keep(w, "T-1");
            if (at_most == "0.06 in") grade_coupon(w, {"T-1", true, "", {}});
        });
    }
    static void finish_in(Writing &w) {
        FinishRequest finish;
        finish.coupon = "T-1";
        finish.found = 1;
        finish_exam(w, finish);
    }
    /// Finishes the exam by the file as it reads now.
    void finish_later() {
        Catalogue fresh(outside);
        Office later(book, fresh);
        Writing writing(later, "A. Field");
        finish_in(writing);
        commit(writing);
    }
    void limit(const std::string &at_most, const std::string &edition = "one", const std::string &more = "",
               const std::string &name = "own.yaml") {
        write_file(
            file(name),
            "set: own\ntitle: t\nedition: " + edition +
                "\nunits: in\nclasses: [A]\nscope: not read\nrules:\n  - {id: r, types: gas pore, exams: VT, "
                "measure: size, at most: " +
                at_most + ", clause: '1', standing: {house: x}}\n" + more);
    }
    GradeStanding standing() {
        Catalogue fresh(outside);
        Office later(book, fresh);
        return standing_of_grade(later, later.coupon("T-1"));
    }
    /// Grades it passed by the file as it reads now.
    Grade pass(const std::string &remark) {
        Catalogue fresh(outside);
        Office later(book, fresh);
        Writing writing(later, "I. Teach");
        const Grade out = carry_out(writing, [&](Writing &w) {
            return grade_coupon(w, {"T-1", true, remark, {}}).value.grade;
        });
        commit(writing);
        return out;
    }
    void qualified() {
        Catalogue fresh(outside);
        Office later(book, fresh);
        Writing writing(later, "I. Teach");
        carry_out(writing, [](Writing &w) { return qualify(w, {"T-1", "asme-ix", "", {}, ""}); });
    }
    std::string passed_among_many() {
        Catalogue fresh(outside);
        Office later(book, fresh);
        Writing writing(later, "I. Teach");
        try {
            carry_out(writing, [](Writing &w) {
                return grade_many(w, {.passed = true, .remark = "", .by = {}, .of = {}});
            });
        } catch (const Refusal &e) {
            return e.what();
        }
        return "";
    }
    void change(const std::map<std::string, std::string> &fields) {
        Catalogue fresh(outside);
        Office later(book, fresh);
        Writing writing(later, "A. Field");
        change_coupon(writing, {{"T-1", fields}, {}, "it was told otherwise"});
        commit(writing);
    }
    /// A verdict as programs kept it that did not say yet whether it went by the coupon's own file.
    void judged_by_older_program(bool text_kept = true) {
        Catalogue fresh(outside);
        Office later(book, fresh);
        const Judged judged = judge_coupon(later, later.coupon("T-1"));
        write([&](Writing &w) {
            if (text_kept) w.ledger().keep_criteria(judged.set->hash, judged.set->name, judged.set->text);
            Entry e;
            e.kind = "verdict";
            e.subject = "T-1";
            e.body = codec::verdict_body(*judged.set, judged.judgement);
            return w.add(e);
        });
    }
    void judge() {
        Catalogue fresh(outside);
        Office later(book, fresh);
        Writing writing(later, "A. Field");
        judge_and_keep(writing, "T-1");
        commit(writing);
    }
    void call_it(const std::string &set) {
        std::string text = read_file(own_);
        text.replace(0, std::string("set: own").size(), "set: " + set);
        write_file(own_, text);
    }
    void correct(const std::string &line) {
        write([&](Writing &w) { correct_indication(w, "T-1", 1, line, "measured again", true); });
    }
    std::size_t entries() { return book.history("T-1").size(); }
    std::string told() {
        Catalogue fresh(outside);
        Office later(book, fresh);
        return text(document_of(*judge_looking_back(later, later.coupon("T-1")).judged), Paint(false), 300);
    }

private:
    std::string own_ = file("own.yaml");
};

} // namespace

TEST_CASE("a grade is given again where the set's text, changed under one edition, turns its verdict") {
    GradedByFile desk;
    CHECK(desk.standing().state == GradeStanding::State::stands);
    CHECK_THAT(desk.told(), !says("another text"));
    desk.limit("0.07 in");
    CHECK(desk.standing().state == GradeStanding::State::stands);
    CHECK_THAT(desk.told(), says("went by another text of the same edition"));
    desk.limit("0.04 in");
    const GradeStanding turned = desk.standing();
    CHECK(turned.state == GradeStanding::State::again);
    CHECK(turned.now == Verdict::reject);
    CHECK_THAT(turned.why, says("the text of own was changed under the same edition"));
}

TEST_CASE(
    "a new edition is no change in place; of a file that is gone nobody can say whether it was changed") {
    GradedByFile desk;
    desk.limit("0.04 in", "two");
    CHECK(desk.standing().state == GradeStanding::State::stands);
    desk.limit("0.04 in");
    CHECK(desk.standing().state == GradeStanding::State::again);
    std::filesystem::remove(desk.file("own.yaml"));
    const GradeStanding gone = desk.standing();
    CHECK(gone.state == GradeStanding::State::again);
    CHECK_THAT(gone.why, says("own.yaml is gone or cannot be read"));
    desk.limit("0.06 in");
    CHECK(desk.standing().state == GradeStanding::State::stands);
}

TEST_CASE("what a text of the set rejected is passed by a softer one in its place only with a reason") {
    GradedByFile desk("0.04 in", GENERATE(true, false)); // rejects the pore, whether or not somebody judges
    const std::string edition = GENERATE("one", "two");
    desk.limit("0.06 in", edition);
    CHECK_THAT(desk.passed_among_many(),
               says("it was rejected by own.yaml before its criteria text was changed"));
    CHECK_THROWS_WITH(desk.pass(""), says("own.yaml before its criteria text was changed"));
    CHECK(desk.pass("the printed copy says so").after_turn);
    desk.limit("0.04 in", edition); // and back again
    CHECK(desk.standing().state == GradeStanding::State::again);
}

TEST_CASE(
    "what a text rejected is told though the coupon is given other criteria and that text is softened") {
    GradedByFile desk("0.04 in", false);
    desk.limit("0.06 in", "one", "", "other.yaml");
    const bool softened_first = GENERATE(true, false);
    if (softened_first) desk.limit("0.06 in");
    desk.change({{"criteria", desk.file("other.yaml")}});
    if (!softened_first) desk.limit("0.06 in");
    CHECK_THROWS_WITH(desk.pass(""),
                      says("it was rejected by own.yaml before its criteria was changed (rule r of text "));
    CHECK_THROWS_WITH(desk.pass(""), says("; #1)"));
    CHECK_THAT(desk.passed_among_many(), says("it was rejected by own.yaml before its criteria was changed"));
}

TEST_CASE("a correction that made a reject go is told though the text that rejected is softened since") {
    GradedByFile desk("0.047 in", false);
    desk.correct("pore 0.045 at 1");
    CHECK_THROWS_WITH(desk.pass(""), says("own.yaml before its find #1 was changed"));
    desk.limit("0.06 in");
    CHECK_THROWS_WITH(desk.pass(""), says("own.yaml before its find #1 was changed"));
}

TEST_CASE("a grade that is refused keeps the text that rejected, and nothing else") {
    GradedByFile desk("0.06 in ", false); // accepts the pore; nobody graded it
    const std::size_t before = desk.entries();
    desk.limit("0.04 in");
    if (GENERATE(true, false))
        CHECK_THROWS_WITH(desk.pass(""), says("is 'reject'; to grade it passed all the same, say why"));
    else
        CHECK_THAT(desk.passed_among_many(), says("is 'reject'"));
    CHECK(desk.entries() == before + 1);
    CHECK_THROWS(desk.pass(""));
    CHECK(desk.entries() == before + 1);
    desk.limit("0.06 in");
    CHECK_THROWS_WITH(desk.pass(""), says("own.yaml before its criteria text was changed"));
}

TEST_CASE("a qualification that is refused keeps the text by which its coupon is rejected now") {
    GradedByFile desk; // graded passed
    desk.write([](Writing &w) { enrol(w, {"W-1", "C. Arc", {}, {}, ""}); });
    desk.change({{"welder", "W-1"}});
    const std::size_t before = desk.entries();
    desk.limit("0.04 in");
    CHECK_THROWS(desk.qualified());
    CHECK(desk.entries() == before + 1);
    desk.limit("0.06 in");
    CHECK_THROWS_WITH(desk.pass(""), says("own.yaml before its criteria text was changed"));
}

TEST_CASE(
    "a grade that is refused because a text cannot say keeps that text, and one by a shipped set none") {
    GradedByFile desk("0.06 in ", false);
    const std::size_t before = desk.entries();
    desk.limit("0.06 in", "one",
               "  - {id: s, types: gas pore, exams: VT, measure: depth, at most: 0.01 in, clause: '2', "
               "standing: {house: x}}\n");
    CHECK_THROWS_WITH(desk.pass(""), says("cannot say"));
    CHECK(desk.entries() == before + 1);
    desk.limit("0.06 in");
    CHECK_THAT(desk.told(), says(", cannot say, went by another text of the same edition"));
    desk.change({{"criteria", "iso-5817"}, {"class", "B"}});
    const std::size_t by_shipped = desk.entries();
    CHECK_THROWS(desk.pass(""));
    CHECK(desk.entries() == by_shipped);
}

TEST_CASE("a reject that an older program kept is told though its file calls its set otherwise since") {
    GradedByFile desk("0.06 in ", false);
    desk.limit("0.04 in");
    desk.judged_by_older_program();
    desk.limit("0.06 in");
    CHECK_THROWS_WITH(desk.pass(""), says("own.yaml before its criteria text was changed"));
    desk.call_it("shop");
    CHECK_THROWS_WITH(desk.pass(""),
                      says("it was rejected by own (one) in the verdict of 2026-11-25, of which an older "
                           "program did not keep whether it went by the coupon's own file; another text "
                           "accepts it now"));
}

TEST_CASE("a text that rejected is told beside the accept though a softer one came between") {
    GradedByFile desk("0.04 in", false);
    desk.limit("0.07 in");
    desk.judge();
    desk.limit("0.06 in");
    CHECK_THAT(desk.told(), says("Caution, it was rejected by own.yaml before its criteria text was changed "
                                 "(rule r of text "));
}

TEST_CASE("what other criteria than its own said of a coupon is not held against those") {
    GradedByFile desk("0.06 in ", false);
    desk.limit("0.04 in", "one", "", "other.yaml");
    desk.write([&](Writing &w) { return judge_and_keep(w, "T-1", {desk.file("other.yaml"), ""}); });
    desk.call_it("shop");
    CHECK_FALSE(desk.pass("").after_turn);
}

TEST_CASE("a reject by a text that nobody can read any more is told, as nobody can say what changed") {
    GradedByFile desk("0.06 in ", false);
    desk.limit("0.04 in");
    desk.judged_by_older_program(false);
    desk.limit("0.06 in");
    CHECK_THROWS_WITH(desk.pass(""),
                      says("it was rejected by own (one) in the verdict of 2026-11-25, and the "
                           "text of that set cannot be read any more"));
}

TEST_CASE("what was found while its exam was open is held against the text of that time too") {
    GradedByFile desk("0.04 in", false, false);
    desk.limit("0.06 in");
    desk.finish_later();
    CHECK_THAT(desk.passed_among_many(),
               says("it was rejected by own.yaml before its criteria text was changed"));
    CHECK_THROWS_WITH(desk.pass(""), says("own.yaml before its criteria text was changed"));
}

TEST_CASE("what an import brings in is held against the text of that time too") {
    GradedByFile desk("0.04 in", false, GENERATE(true, false));
    ImportRequest request;
    request.text = exported(desk.office, std::nullopt, {}, true).text;
    request.lines = request.open_files = true;
    Desk there;
    there.write([&](Writing &w) { return store_import(w, prepare_import(there.office, request)); });
    desk.limit("0.06 in");
    Catalogue fresh(there.outside);
    Office later(there.book, fresh);
    const auto known = turned(later, "T-1");
    REQUIRE(known.size() == 1);
    CHECK(known.front().by == Turned::By::text);
}
