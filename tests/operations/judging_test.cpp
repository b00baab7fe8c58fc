#include "operations/judging.hpp"

#include "booth.hpp"
#include "catch.hpp"
#include "operations/looking.hpp"
#include "operations/told_class.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

Done<Judged> judged_and_kept(Booth &booth, const JudgeRequest &request = {}) {
    return booth.write([&](Writing &w) { return judge_and_keep(w, "T-1", request); });
}

Done<Graded> graded(Booth &booth, bool passed, const std::string &remark = "", const JudgeRequest &by = {}) {
    return booth.write([&](Writing &w) { return grade_coupon(w, {"T-1", passed, remark, by}); }, "J. Quay");
}

std::vector<JudgedOrNot> all(Booth &booth, const JudgeRequest &request = {}) {
    std::vector<JudgedOrNot> out;
    judge_all(booth.office, request, [&](JudgedOrNot one) { out.push_back(std::move(one)); });
    return out;
}

} // namespace

TEST_CASE("a coupon is judged for the class it names, or the one that is asked") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.finds("gas pore 0.055 at 2");
    const Judged judged = judge_coupon(booth.office, booth.office.coupon("T-1"));
    CHECK(judged.mark == "T-1");
    CHECK(judged.set->name == "mil-hdbk-1890-table-3");
    CHECK(judged.judgement.classes.size() == 3);
    CHECK(judged.sought == 1u);
    CHECK(judged.verdict() == Verdict::accept);
    CHECK(booth.verdict({"", "1"}) == Verdict::reject);
    CHECK(booth.verdict({"", "3"}) == Verdict::accept);
    booth.finds("gas pore at 4"); // of no size
    CHECK(booth.verdict() == Verdict::cannot_say);
    CHECK(booth.verdict({"", "1"}) == Verdict::reject);
    CHECK(judged.unit == Unit::inch);
    CHECK(judged.exams.size() == 3);
    CHECK(judged.indications.size() == 1);
}

TEST_CASE("without a class sought the best of all classes decides; a set of one class seeks that") {
    Booth booth;
    booth.coupon("T-1", {{"class", ""}});
    booth.exams();
    const auto sought = [&](const JudgeRequest &request) {
        return judge_coupon(booth.office, booth.office.coupon("T-1"), request).sought;
    };
    CHECK_FALSE(sought({}));
    CHECK(booth.verdict() == Verdict::cannot_say); // the RT is open
    booth.finish();
    booth.finds("gas pore 0.055 at 2"); // class 1 rejects, the others accept
    CHECK(booth.verdict() == Verdict::accept);
    booth.finds("gas pore at 4");
    CHECK(booth.verdict() == Verdict::cannot_say);
    booth.finds("crack l 0.1 at 5");
    CHECK(booth.verdict() == Verdict::reject);
    CHECK(sought({"", "3"}) == 2u);
    CHECK(sought({"mil-t-81838", ""}) == 0u);
}

TEST_CASE("other criteria than the coupon's need not have its class, but must have the one that is asked") {
    Booth booth;
    booth.coupon();
    booth.exams();
    const auto judged = [&](const JudgeRequest &request) {
        return judge_coupon(booth.office, booth.office.coupon("T-1"), request);
    };
    CHECK_FALSE(judged({"iso-5817", ""}).sought); // classes B, C and D
    CHECK(judged({"iso-23277", ""}).sought);      // has a class 2 of its own
    const Refusal of_own = booth.refusal([&] { judged({"", "9"}); });
    CHECK_THAT(of_own.what(), says("have no class '9'; they have 1, 2 and 3"));
    CHECK(field_of(of_own) == "class");
    CHECK_THAT(booth.refusal([&] { judged({"iso-5817", "2"}); }).what(), says("they have B, C and D"));
    CHECK_THAT(booth.refusal([&] { judged({"iso-5818", ""}); }).what(), says("did you mean 'iso-5817'?"));
}

TEST_CASE("a coupon without criteria is judged by those that are asked, or not at all") {
    Booth booth;
    booth.coupon("T-1", {{"criteria", ""}, {"class", ""}});
    const Refusal none = booth.refusal([&] { judged_and_kept(booth); });
    CHECK_THAT(none.what(), says("coupon T-1 names no criteria"));
    CHECK(field_of(none) == "give criteria");
    CHECK(remedies_of(none) == "change T-1 criteria why");
    booth.exams();
    booth.finish();
    CHECK(judged_and_kept(booth, {"mil-hdbk-1890-table-3", "2"}).value.verdict() == Verdict::accept);
    CHECK_THAT(booth.refusal([&] { judged_and_kept(booth, {"", "2"}); }).what(), says("no criteria"));
}

TEST_CASE("a verdict is stored once, with the text of its criteria, and again when it differs") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.finds("gas pore 0.055 at 2");
    const auto before = booth.entries();
    const Judged judged = judged_and_kept(booth).value;
    CHECK(booth.entries() == before + 1);
    judged_and_kept(booth);
    judged_and_kept(booth, {"", "1"}); // every class is in it, whichever is sought
    CHECK(booth.entries() == before + 1);
    CHECK(booth.book.ledger().criteria_text(judged.set->hash) == judged.set->text);

    judged_and_kept(booth, {"ufgs-15216n", ""});
    CHECK(booth.entries() == before + 2);
    judged_and_kept(booth); // not what the last one says
    CHECK(booth.entries() == before + 3);
    booth.finds("gas pore 0.09 at 4"); // three entries: opened, logged, finished
    judged_and_kept(booth);
    CHECK(booth.entries() == before + 7);
    const auto verdicts = booth.office.coupon("T-1").verdicts;
    REQUIRE(verdicts.size() == 4);
    CHECK(verdicts[0].verdict_of("1") == "reject");
    CHECK(verdicts[0].verdict_of("2") == "accept");
    CHECK(verdicts[0].body == verdicts[2].body);
    CHECK(verdicts[1].set == "ufgs-15216n");
    CHECK(verdicts[0].stamp.who == "tester");
    CHECK(verdicts[0].engine == engine_number);
}

TEST_CASE("who only looks stores nothing") {
    Booth booth;
    booth.coupon();
    booth.exams();
    const auto before = booth.entries();
    judge_coupon(booth.office, booth.office.coupon("T-1"));
    judge_by(booth.office.coupon("T-1"), booth.catalogue.criteria("iso-5817"));
    all(booth);
    explain(booth.office, "T-1");
    list_coupons(booth.office);
    CHECK(booth.entries() == before);
}

TEST_CASE("one coupon that cannot be judged keeps the others from nothing, and says why") {
    Booth booth;
    booth.coupon("A-1");
    booth.coupon("B-1", {{"criteria", ""}, {"class", ""}});
    booth.coupon("C-1", {{"criteria", "iso-5817"}, {"class", "C"}});
    booth.coupon("D-1");
    for (const char *mark : {"A-1", "D-1"}) booth.exams(mark);
    booth.finish(3, "A-1");
    booth.finds("crack l 0.2 at 2", "D-1");
    auto judged = all(booth);
    REQUIRE(judged.size() == 4);
    CHECK(judged[0].mark == "A-1");
    CHECK(judged[0].judged->verdict() == Verdict::accept);
    CHECK_FALSE(judged[1].judged);
    CHECK(judged[1].mark == "B-1");
    CHECK(judged[1].why_not == "coupon B-1 names no criteria");
    CHECK(judged[2].judged->verdict() == Verdict::cannot_say);
    CHECK(judged[3].judged->verdict() == Verdict::reject);

    judged = all(booth, {"", "C"});
    CHECK_THAT(judged[0].why_not, says("have no class 'C'"));
    CHECK(judged[2].judged);

    const auto before = booth.entries();
    std::vector<std::string> marks;
    judge_and_keep_all(
        booth.office, {}, [&](const JudgedOrNot &one) { marks.push_back(one.mark + one.why_not); }, {},
        [&](const auto &some) { booth.write(some); });
    CHECK(marks == std::vector<std::string>{"A-1", "B-1coupon B-1 names no criteria", "C-1", "D-1"});
    CHECK(booth.entries() == before + 3);
    CHECK(booth.office.coupon("B-1").verdicts.empty());
    CHECK(booth.office.coupon("D-1").verdicts.size() == 1);
}

TEST_CASE("many are judged and stored some at a time, each handed on once it is stored, in order") {
    Booth booth;
    std::vector<std::string> all, marks;
    for (int n = 1; n <= 201; ++n) all.push_back("T-" + std::to_string(n));
    booth.write([&](Writing &w) {
        for (const auto &mark : all)
            register_coupon(w, {mark, {{"criteria", "mil-hdbk-1890-table-3"}, {"class", "2"}}});
    });
    int transactions = 0;
    const std::size_t stored = booth.entries();
    const auto judge_them = [&] {
        marks.clear();
        judge_and_keep_all(
            booth.office, {},
            [&](const JudgedOrNot &one) {
                if (marks.size() % 100 == 0) // by another program
                    CHECK(Ledger(booth.path(), Ledger::Mode::read)
                              .entries_of(Family::coupon, one.mark)
                              .size() == 2);
                marks.push_back(one.mark);
            },
            {},
            [&](const auto &some) {
                ++transactions;
                booth.write(some);
            });
    };
    judge_them();
    CHECK(marks == all);
    CHECK(transactions == 2);
    CHECK(booth.entries() == stored + 201);
    judge_them(); // nothing is new
    CHECK(marks == all);
    CHECK(booth.entries() == stored + 201);
    CHECK(Ledger(booth.path(), Ledger::Mode::read).lines({}).size() == 201);
}

TEST_CASE("a damaged record is not passed over as a coupon that cannot be judged") {
    Booth booth;
    booth.coupon("A-1");
    booth.write([](Writing &w) {
        Entry e;
        e.kind = "indication";
        e.subject = "A-1";
        e.exam = e.number = 1;
        e.at = w.stamp().at;
        e.who = w.stamp().who;
        e.body = R"({"type":"no type at all"})";
        w.ledger().append(e);
    });
    CHECK_THROWS_AS(all(booth), StoreError);
    CHECK_THROWS_AS(list_coupons(booth.office), StoreError);
}

TEST_CASE("an explanation is of one class, with grade, remarks and welder") {
    Booth booth;
    booth.coupon("T-1", {{"welder", "L1"}, {"class", ""}});
    booth.exams();
    booth.finds("gas pore 0.09 at 2");
    const Refusal which = booth.refusal([&] { graded(booth, false, "shorter arc"); });
    CHECK_THAT(which.what(), says("which class? coupon T-1 names none; its criteria have 1, 2 and 3"));
    CHECK(field_of(which) == "give class");
    const Judged any = explain(booth.office, "T-1").judged;
    CHECK_FALSE(any.sought);
    CHECK(any.verdict() == any.judgement.classes[told_class(any)].verdict);
    CHECK_THAT(booth.refusal([&] { explain(booth.office, "T-9"); }).what(), says("there is no coupon 'T-9'"));
    const Explained before = explain(booth.office, "T-1", {"", "2"});
    CHECK(before.judged.verdict() == Verdict::reject);
    CHECK(before.welder == "L1");
    CHECK_FALSE(before.grade);
    CHECK(before.remarks.empty());
    graded(booth, false, "shorter arc", {"", "2"});
    booth.write([](Writing &w) { remark_on(w, "T-1", "restart looks cold"); });
    const Explained now = explain(booth.office, "T-1", {"", "3"});
    CHECK(now.grade->class_id == "2");
    REQUIRE(now.remarks.size() == 1);
    CHECK(now.remarks[0].text == "restart looks cold");
}

TEST_CASE("a grade is for a class, with the verdict stored beside it") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.finish();
    const auto before = booth.entries();
    const Graded done = graded(booth, true, " fine root ").value;
    CHECK(done.mark == "T-1");
    CHECK(done.grade.class_id == "2");
    CHECK(done.grade.remark == "fine root");
    CHECK_FALSE(done.grade.against_verdict);
    CHECK(done.verdict == Verdict::accept);
    CHECK(booth.entries() == before + 2);
    const CouponState now = booth.office.coupon("T-1");
    CHECK(now.verdicts.size() == 1);
    REQUIRE(now.grade);
    CHECK(now.grade->passed);
    CHECK(now.grade->stamp.who == "J. Quay");
    // The last one stands; the verdict is there already.
    graded(booth, true, "", {"", "3"});
    CHECK(booth.entries() == before + 3);
    CHECK(booth.office.coupon("T-1").grade->class_id == "3");

    booth.coupon("T-2", {{"class", ""}});
    CHECK(field_of(booth.refusal([&] {
              booth.write([](Writing &w) { return grade_coupon(w, {"T-2", true, "", {}}); });
          })) == "give class");
}

TEST_CASE("a grade against the verdict needs a remark and is marked as such") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.finds("gas pore 0.09 at 2");
    const Refusal refused = booth.refusal([&] { graded(booth, true, "  "); });
    CHECK_THAT(refused.what(),
               says("the verdict for class 2 is 'reject'; to grade it passed all the same, say why"));
    CHECK(field_of(refused) == "give remark");
    CHECK(graded(booth, true, "ground flush and examined again").value.grade.against_verdict);
    CHECK(booth.office.coupon("T-1").grade->against_verdict);
    CHECK_FALSE(graded(booth, false).value.grade.against_verdict); // as the verdict says
    CHECK_FALSE(booth.office.coupon("T-1").grade->against_verdict);

    // Nobody can say: to pass it is against the verdict, to fail it is not.
    booth.take_back(1);
    booth.finds("gas pore at 4");
    CHECK_THAT(booth.refusal([&] { graded(booth, true); }).what(), says("'cannot say'"));
    CHECK_FALSE(graded(booth, false).value.grade.against_verdict);

    // It would accept: to fail it all the same needs a remark too.
    booth.take_back(2);
    CHECK(field_of(booth.refusal([&] { graded(booth, false); })) == "give remark");
    CHECK(graded(booth, false, "arc strikes").value.grade.against_verdict);
}

TEST_CASE("a grade holds for the state that it was given on") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.finds("gas pore 0.055 at 2");
    const auto standing = [&] { return standing_of_grade(booth.office, booth.office.coupon("T-1")); };
    CHECK(standing().state == GradeStanding::State::none);
    graded(booth, true);
    CHECK(standing().state == GradeStanding::State::stands);
    CHECK(explain(booth.office, "T-1").grading.why.empty());
    booth.finds("gas pore 0.01 at 6"); // changes no verdict of class 2
    CHECK(standing().state == GradeStanding::State::stands);
    CHECK(standing().now == Verdict::accept);
    booth.finds("crack l 0.1 at 5");
    const GradeStanding again = standing();
    CHECK(again.state == GradeStanding::State::again);
    CHECK(again.now == Verdict::reject);
    CHECK_THAT(again.why, says("the verdict for class 2 was 'accept' when it was given and is 'reject' now"));
    CHECK(explain(booth.office, "T-1").grading.why == again.why);
    CHECK(list_coupons(booth.office)[0].grade_standing.state == GradeStanding::State::again);
    CHECK(show_coupon(booth.office, "T-1").grade_standing.why == again.why);
    // Graded once more, it goes by the criteria of then, whatever the coupon is judged by later.
    graded(booth, false);
    CHECK(standing().state == GradeStanding::State::stands);
    booth.write([](Writing &w) {
        change_coupon(w, {{"T-1", {{"criteria", "iso-5817"}, {"class", "C"}}}, {}, "other job"});
    });
    CHECK(standing().state == GradeStanding::State::stands);
    booth.take_back(3);
    CHECK_THAT(standing().why, says("class 2 was 'reject' when it was given and is 'accept' now"));
}

TEST_CASE("a coupon that was changed and judged again does not read as if nobody had looked since") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.finish();
    judged_and_kept(booth);
    booth.write([](Writing &w) { change_coupon(w, {{"T-1", {{"note", "bevelled"}}}, {}, "told later"}); });
    const auto is_told = [&] {
        const CouponState now = booth.office.coupon("T-1");
        return now.changed_after(now.verdicts.back().seq);
    };
    CHECK(is_told());
    judged_and_kept(booth);
    CHECK_FALSE(is_told());
    const CouponState now = booth.office.coupon("T-1");
    REQUIRE(now.verdicts.size() == 2);
    CHECK(now.verdicts[0].body == now.verdicts[1].body);
    judged_and_kept(booth);
    CHECK(booth.office.coupon("T-1").verdicts.size() == 2);
}
