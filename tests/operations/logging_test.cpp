#include "operations/logging.hpp"

#include "booth.hpp"
#include "catch.hpp"
#include "operations/looking.hpp"

#include <algorithm>

using namespace beadbook;
using namespace beadbook::test;

namespace {

Refusal refused_to_log(Booth &booth, const std::string &text, int exam = 0) {
    return booth.refusal([&] { booth.log(text, "T-1", exam); });
}

Done<Logged> corrected(Booth &booth, int number, const std::string &line, const std::string &why = "slip") {
    return booth.write([&](Writing &w) { return correct_indication(w, "T-1", number, line, why); });
}

void withdraw(Booth &booth, int number, const std::string &why = "slip") {
    booth.write([&](Writing &w) { withdraw_indication(w, "T-1", number, why); });
}

/// All of a coupon's state, to be compared.
std::string told(const CouponState &c) {
    std::string out = c.record.id + " " + c.record.get("thickness") + " " + std::to_string(c.last_seq) + " " +
                      std::to_string(c.record_seq) + " " + std::to_string(c.last_exam) + " " +
                      std::to_string(c.last_indication);
    for (const auto &e : c.exams)
        out += "\nexam " + std::to_string(e.number) + " " + std::string(name_of(e.method)) + " " + e.note +
               " " + e.practice_hash + " " + e.invalid + " " + e.open + (e.pending ? " pending " : " ") +
               std::to_string(c.exam_seq.at(e.number)) + " " +
               (e.finished ? std::to_string(e.finished->found) + e.finished->by : "open") + " of " +
               std::to_string(c.finds_of(e.number));
    for (const auto &i : c.indications)
        out += "\n#" + std::to_string(i.number) + " of " + std::to_string(i.exam) + " " + print_log_line(i) +
               " " + std::to_string(c.indication_seq.at(i.number));
    out += "\n" + std::to_string(c.exam_seq.size()) + " " + std::to_string(c.indication_seq.size());
    for (const auto &r : c.remarks) out += "\n" + r.text + " " + r.stamp.who + " " + r.stamp.at;
    for (const auto &v : c.verdicts) out += "\n" + std::to_string(v.seq) + " " + v.body;
    return out + "\n" +
           (c.grade ? c.grade->decision() + std::to_string(c.grade->seq) + c.grade->stamp.who : "ungraded");
}

} // namespace

TEST_CASE("lines are logged under the open exam, with numbers of their own") {
    Booth booth;
    CHECK_THAT(refused_to_log(booth, "pore 0.04 at 1").what(), says("there is no coupon 'T-1'"));
    booth.coupon();
    const Refusal none = refused_to_log(booth, "pore 0.04 at 1");
    CHECK_THAT(none.what(), says("coupon T-1 has no exam yet"));
    CHECK(remedies_of(none) == "exam T-1 VT examiner");
    booth.exams();
    const Logged first = booth.log("pore 0.04 at 1\r\n\n  # a comment\nslag .1x.02 at 3 # side wall\n").value;
    CHECK(first.coupon == "T-1");
    CHECK(first.exam == 3);
    REQUIRE(first.indications.size() == 2);
    CHECK(first.indications[0].number == 1);
    CHECK(first.indications[1].number == 2);
    CHECK(first.indications[1].exam == 3);
    CHECK(first.indications[1].remark == "side wall");
    CHECK(booth.office.coupon("T-1").indications == first.indications);
    CHECK(booth.log("pore 0.04 at 5", "T-1", 3).value.indications[0].number == 3);
    CHECK_THAT(refused_to_log(booth, "pore 0.04 at 1", 9).what(), says("has no exam 9"));
    CHECK_THAT(refused_to_log(booth, "\n# nothing\n").what(), says("there is no line to log"));
    withdraw(booth, 3);
    CHECK(booth.log("pore 0.04 at 6").value.indications[0].number == 4);
}

TEST_CASE("nothing is logged under an exam that is finished, or where it could be of two") {
    Booth booth;
    booth.coupon();
    booth.exams();
    const Refusal finished = refused_to_log(booth, "undercut d 0.01 l 0.2 at 1", 1);
    CHECK_THAT(finished.what(), says("exam 1 of coupon T-1 is finished"));
    CHECK(remedies_of(finished) == "reopen T-1 1 why; exam T-1 VT examiner");
    booth.exam(Exam::VT);
    const Refusal which = refused_to_log(booth, "pore 0.04 at 1");
    CHECK_THAT(which.what(), says("coupon T-1 has open: 3 (RT) and 4 (VT)"));
    CHECK(field_of(which) == "give exam");
    const Logged named = booth.log("undercut l 3/8 d 0.01 at 1 smooth", "T-1", 4).value;
    CHECK(named.exam == 4);
    CHECK(named.indications[0].exam == 4);
    booth.finish(4);
    CHECK(booth.log("pore 0.04 at 1").value.exam == 3);
    booth.finish(3);
    CHECK_THAT(refused_to_log(booth, "pore 0.04 at 1").what(), says("is finished"));
    booth.reopen(3);
    CHECK(booth.log("pore 0.04 at 2").value.exam == 3);
}

TEST_CASE("all lines are stored or none, and every bad one is named with its column") {
    Booth booth;
    booth.coupon();
    booth.exams();
    const std::string text =
        "pore 0.04 at 1\n# a comment\nundrcut d 0.1\n\npore 0.04 at 99\nslag .1x.02 at 3\npore oops\n";
    const std::string all = refused_to_log(booth, text).what();
    CHECK_THAT(all, says("3 lines cannot be taken, nothing was stored:\n"
                         "line:3:1: 'undrcut d' does not begin with a type of imperfection; did you mean "
                         "'undercut'?"));
    CHECK_THAT(all, says("\nline:5:14: '99' is off the weld, which is 8 in long\n"
                         "line:7:6: 'oops' is not understood"));
    CHECK(std::count(all.begin(), all.end(), '\n') == 3);
    CHECK(booth.office.coupon("T-1").indications.empty());
    CHECK_THAT(refused_to_log(booth, "oops").what(), says("1 line cannot be taken"));
    std::string many;
    for (int i = 0; i < 50; ++i) many += "oops\n";
    const std::string refused = refused_to_log(booth, many).what();
    CHECK_THAT(refused, says("50 lines cannot be taken"));
    CHECK_THAT(refused, says("\nline:20:1:"));
    CHECK(refused.find("line:21:") == std::string::npos);
    CHECK(refused.ends_with("\nand 30 more"));
}

TEST_CASE("bare numbers of a line take the coupon's unit") {
    Booth booth;
    booth.coupon("T-1", {{"units", "mm"}, {"weld-length", "200"}});
    booth.exams();
    const auto found = booth.log("pore 1.2 at 50\npore 0.05in at 2in").value.indications;
    CHECK(print_log_line(found[0]) == "gas pore size 1.2 mm at 50 mm");
    CHECK(print_log_line(found[1]) == "gas pore size 0.05in at 2in");
    CHECK(found[0].measures.at(Quantity::size).value == Exact(1'200'000));
}

TEST_CASE("a find that the process can hardly make is doubted, wherever it is written") {
    Booth booth;
    booth.coupon("T-1", {{"process", "SMAW"}});
    booth.exams();
    const auto logged = booth.log("pore 0.04 at 1\ntungsten inclusion 0.05 at 2");
    REQUIRE(logged.notes.size() == 1);
    CHECK_THAT(logged.notes[0], says("#2: a tungsten inclusion, but SMAW has no tungsten electrode"));
    CHECK(logged.value.indications.size() == 2); // it is stored all the same
    const auto again = corrected(booth, 1, "tungsten inclusion 0.04 at 1");
    REQUIRE(again.notes.size() == 1);
    CHECK_THAT(again.notes[0], says("#1: a tungsten inclusion"));
    CHECK(corrected(booth, 2, "pore 0.05 at 2").notes.empty());
    booth.coupon("T-2"); // of no process that is known
    booth.exams("T-2");
    CHECK(booth.log("tungsten inclusion 0.05 at 2", "T-2").notes.empty());
}

TEST_CASE("a correction keeps number, exam and the old entry, and needs one line and a reason") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.exam(Exam::VT);
    booth.log("undercut d 0.01 l 0.2 at 1 smooth", "T-1", 4);
    booth.log("pore 0.04 at 2", "T-1", 3);
    const auto before = booth.office.coupon("T-1").indication_seq.at(1);
    const Logged now = corrected(booth, 1, "undercut d 0.02 l 0.2 at 1 smooth", "read the scale wrong").value;
    REQUIRE(now.indications.size() == 1);
    CHECK(now.exam == 4);
    CHECK(now.indications[0].number == 1);
    const CouponState state = booth.office.coupon("T-1");
    CHECK(state.indications.size() == 2);
    CHECK(state.needed_indication(1) == now.indications[0]);
    const Entry last = history_of_coupon(booth.office, "T-1").back();
    CHECK(last.supersedes == before);
    CHECK(last.reason == "read the scale wrong");
    CHECK(last.number == 1);
    CHECK(last.exam == 4);

    const auto refused = [&](int number, const std::string &line, const std::string &why = "slip") {
        return booth.refusal([&] { corrected(booth, number, line, why); });
    };
    CHECK_THAT(refused(7, "pore 0.1 at 1").what(), says("has no indication #7"));
    CHECK(field_of(refused(1, "pore 0.1 at 1", "")) == "give why");
    CHECK_THAT(refused(1, "pore 0.1 at 99").what(), says("off the weld"));
    for (const char *line : {"", "# nothing", "pore 0.1 at 1\npore 0.1 at 2"})
        CHECK_THAT(refused(1, line).what(), says("a correction is exactly one line"));
}

TEST_CASE("a correction that turns the verdict says so, and no other does") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.finds("gas pore 0.01 at 2");
    CHECK(corrected(booth, 1, "gas pore 0.012 at 2").notes.empty());
    const auto turned = corrected(booth, 1, "crack 0.2 at 2").notes;
    REQUIRE(turned.size() == 1);
    CHECK_THAT(turned[0], says("the correction changes the verdict on coupon T-1 by mil-hdbk-1890-table-3"));
    CHECK_THAT(turned[0], says("class 2 was accept and is reject"));
}

TEST_CASE("what is withdrawn counts no more and stays in the history") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.finds("crack l 0.2 at 2");
    CHECK(booth.verdict() == Verdict::reject);
    CHECK(field_of(booth.refusal([&] { withdraw(booth, 1, " "); })) == "give why");
    CHECK_THAT(booth.refusal([&] { withdraw(booth, 2); }).what(), says("has no indication #2"));
    withdraw(booth, 1, "gone after cleaning");
    const auto history = history_of_coupon(booth.office, "T-1");
    CHECK(is_withdrawal(history.back()));
    CHECK(history.back().reason == "gone after cleaning");
    CHECK(history[history.size() - 3].body.find("crack") != std::string::npos);
    CHECK(booth.office.coupon("T-1").indications.empty());
    // The exam was finished with one find: somebody has to say that it is none.
    CHECK(booth.verdict({"", "1"}) == Verdict::cannot_say);
    booth.finds("");
    CHECK(booth.verdict({"", "1"}) == Verdict::accept);
    CHECK_THAT(booth.refusal([&] { withdraw(booth, 1); }).what(), says("has no indication #1"));
    CHECK_THAT(booth.refusal([&] { corrected(booth, 1, "pore 0.1 at 1"); }).what(),
               says("has no indication #1"));
}

TEST_CASE("a coupon is folded once in a writing, however many lines are logged") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.write([](Writing &w) {
        w.coupon("T-1");
        // Past the writing: it would be seen if the coupon were read again.
        Entry e;
        e.kind = "remark";
        e.subject = "T-1";
        e.at = w.stamp().at;
        e.who = w.stamp().who;
        e.body = R"({"text":"past the writing"})";
        w.ledger().append(e);
        for (int i = 0; i < 5; ++i) log_lines(w, {"T-1", 0, "pore 0.04 at 1\npore 0.04 at 2", "line", true});
        correct_indication(w, "T-1", 1, "pore 0.05 at 1", "slip");
        withdraw_indication(w, "T-1", 2, "slip");
        judge_and_keep(w, "T-1");
        CHECK(w.coupon("T-1").indications.size() == 9);
        CHECK(w.coupon("T-1").remarks.empty());
        // A change of the coupon itself moves what lies on it: all is read again.
        change_coupon(w, {{"T-1", {{"note", "x"}}}, {}, "slip"});
        CHECK(w.coupon("T-1").remarks.size() == 1);
    });
}

TEST_CASE("a coupon that is folded as it is written to is the one that is read afterwards") {
    Booth booth;
    const auto check = [](Writing &w) { CHECK(told(w.coupon("T-1")) == told(w.office().coupon("T-1"))); };
    booth.write([&](Writing &w) {
        register_coupon(w, {"T-1",
                            {{"criteria", "mil-hdbk-1890-table-3"},
                             {"class", "2"},
                             {"joint", "groove"},
                             {"thickness", "0.15in"},
                             {"weld-length", "8in"}}});
        check(w);
        ExamRequest vt;
        vt.coupon = "T-1";
        vt.examiner = "A. Field";
        vt.level = "II";
        vt.practice = "asme-v-vt";
        vt.conditions = {"light=60 fc"};
        record_exam(w, vt);
        check(w);
        ExamRequest rt = vt;
        rt.method = Exam::RT;
        rt.practice.clear();
        rt.conditions.clear();
        record_exam(w, rt);
        rt.found = 0;
        record_exam(w, rt);
        check(w);
        log_lines(w, {"T-1", 1, "undercut d 0.01 l 0.2 at 1 smooth", "line"});
        log_lines(w, {"T-1", 2, "pore 0.04 at 2\ncrack l 0.1 at 3", "line"});
        check(w);
        finish_exam(w, {"T-1", 2, 2, false});
        check(w);
        correct_indication(w, "T-1", 2, "pore 0.05 at 2", "slip");
        withdraw_indication(w, "T-1", 3, "slip");
        check(w); // finished with one more than is on record
        vt.replaces = 1;
        vt.why = "brighter";
        vt.conditions = {"light=120 fc"};
        record_exam(w, vt);
        withdraw_exam(w, "T-1", 3, "slip");
        check(w);
        remark_on(w, "T-1", "fine root");
        judge_and_keep(w, "T-1");
        grade_coupon(w, {"T-1", false, "shorter arc", {}});
        check(w);
        log_lines(w, {"T-1", 1, "pore 0.02 at 4", "line"});
        CHECK(w.coupon("T-1").indications.back().number == 4);
        reopen_exam(w, "T-1", 2, "more to log");
        check(w);
        change_coupon(w, {{"T-1", {{"thickness", "0.2in"}}}, {}, "measured again"});
        check(w);
    });
    CHECK(booth.office.coupon("T-1").remarks.size() == 1);
}

TEST_CASE(
    "lines that an exam has already are refused where they come as a text, unless they are meant again") {
    Booth booth;
    booth.coupon();
    booth.exams();
    const auto take = [&](const std::string &text, bool again = false) {
        return booth.write([&](Writing &w) {
            return log_lines(w, {"T-1", 0, text, "finds.txt", false, true, again});
        });
    };
    take("pore 0.04 at 2\ncrack 0.2 at 3 # bright\n");
    const Refusal longer =
        booth.refusal([&] { take("pore 0.04 at 2\ncrack 0.2 at 3 # bright\npore 0.05 at 6\n"); });
    CHECK(longer.field() == "again");
    CHECK_THAT(longer.what(), says("some lines are logged already: 'gas pore size 0.04 in at 2 in' as #1 and "
                                   "'crack size 0.2 in at 3 in # bright' as #2"));
    CHECK(take("pore 0.05 at 6\n").value.indications.size() == 1); // a new one alone
    CHECK(take("pore 0.04 at 2\npore 0.05 at 7\n", true).value.indications.size() == 2);
    // One that is typed may be another: it is asked about.
    CHECK_THAT(refused_to_log(booth, "pore 0.04 at 2").what(), says("stands as #1: is this another find?"));
    CHECK(booth.write([](Writing &w) {
                   return log_lines(w, {"T-1", 0, "pore 0.04 at 2", "line", true});
               })
              .value.indications.size() == 1);
}

TEST_CASE("a line may say that an exam found none, where the log may finish") {
    Booth booth;
    booth.coupon();
    for (const Exam method : {Exam::VT, Exam::MT, Exam::RT}) booth.exam(method);
    const auto take = [&](const std::string &text) {
        return booth.write([&](Writing &w) {
            return log_lines(w, {"T-1", 0, text, "line", false, false, false, true});
        });
    };
    const Logged done = take("VT none\nRT pore 0.04 at 2\nnone MT\n").value;
    CHECK(done.none == std::vector<int>{1, 2});
    CHECK(done.exam == 3);
    CHECK(done.indications.size() == 1);
    const CouponState state = booth.office.coupon("T-1");
    CHECK(state.exams[0].finished->found == 0);
    CHECK(state.exams[1].finished->found == 0);
    CHECK_FALSE(state.exams[2].finished);
    CHECK_THAT(booth.refusal([&] { take("none\n"); }).what(), says("1 is on record")); // the RT has a find
    // Elsewhere `none` is no find.
    CHECK_THAT(booth.refusal([&] { booth.log("none"); }).what(), says("none is said when it is finished"));
}
