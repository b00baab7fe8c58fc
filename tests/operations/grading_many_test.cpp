#include "operations/grading_many.hpp"

#include "booth.hpp"
#include "catch.hpp"
#include "operations/selecting.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// Examined whole, with what the RT found.
void put_examined(Booth &booth, const std::string &mark, const std::string &found = "",
                  const Booth::Fields &more = {}) {
    booth.coupon(mark, more);
    booth.exams(mark);
    if (found.empty())
        booth.finish(3, mark);
    else
        booth.finds(found, mark);
}

Done<GradedMany> grade_those(Booth &booth, bool passed, const Selection &of = {},
                             const JudgeRequest &by = {}) {
    return booth.write([&](Writing &w) { return grade_many(w, {passed, "as agreed", by, of}); }, "J. Quay");
}

Selection judged(Verdict verdict) {
    Selection out;
    out.verdict = verdict;
    return out;
}

std::string grade_of(Booth &booth, const std::string &mark) {
    const auto coupon = booth.office.coupon(mark);
    return coupon.grade ? coupon.grade->decision() : "none";
}

} // namespace

TEST_CASE("many grades at once go by the verdict, each with what decided") {
    Booth booth;
    put_examined(booth, "T-1");
    put_examined(booth, "T-2", "crack l 0.2 at 2");
    put_examined(booth, "T-3", "gas pore 0.02 at 2");
    const auto done = grade_those(booth, true, judged(Verdict::accept));
    REQUIRE(done.value.graded.size() == 2);
    CHECK(done.value.graded[0].graded.mark == "T-1");
    CHECK(done.value.graded[1].graded.mark == "T-3");
    CHECK(done.value.graded[1].graded.verdict == Verdict::accept);
    CHECK(done.value.graded[1].judged.judgement.classes[1].nearest.has_value());
    CHECK(grade_of(booth, "T-1") == "passed");
    CHECK(grade_of(booth, "T-2") == "none");
    CHECK(grade_of(booth, "T-3") == "passed");
    CHECK(booth.office.coupon("T-3").grade->stamp.who == "J. Quay");
    CHECK(booth.office.coupon("T-3").grade->remark == "as agreed");
    CHECK_FALSE(booth.office.coupon("T-3").grade->against_verdict);

    CHECK(grade_those(booth, false, judged(Verdict::reject)).value.graded.size() == 1);
    CHECK(grade_of(booth, "T-2") == "failed");
}

TEST_CASE("what cannot be graded so keeps all of them from it, and each is named") {
    Booth booth;
    put_examined(booth, "good");
    put_examined(booth, "bad", "crack l 0.2 at 2");
    booth.coupon("open");
    booth.exams("open");
    booth.put("bare");
    booth.coupon("no-class", {{"class", ""}});
    put_examined(booth, "bent", "", {{"mechanical", "failed"}});
    const std::string passed = booth.refusal([&] { grade_those(booth, true); }).what();
    CHECK_THAT(passed, says("5 of 6 cannot be graded passed among many, nothing was stored"));
    CHECK_THAT(passed, says("\nbad: the verdict for class 2 is 'reject'"));
    CHECK_THAT(passed, says("\nopen: the verdict for class 2 is 'cannot say'"));
    CHECK_THAT(passed, says("\nbare: coupon bare names no criteria"));
    CHECK_THAT(passed, says("\nno-class: it names no class; its criteria have 1, 2 and 3"));
    CHECK_THAT(passed, says("\nbent: its mechanical tests failed"));
    CHECK(passed.find("\ngood") == std::string::npos);
    CHECK(grade_of(booth, "good") == "none");
    // A coupon that nobody can judge yet is not failed among many either.
    const std::string failed = booth.refusal([&] { grade_those(booth, false); }).what();
    CHECK_THAT(failed, says("4 of 6 cannot be graded failed"));
    CHECK_THAT(failed, says("\nopen: the verdict for class 2 is 'cannot say'"));
    CHECK_THAT(failed, says("\ngood: the verdict for class 2 is 'accept'"));
    CHECK(failed.find("\nbent") == std::string::npos);
    // By a class that all meet or do not meet.
    CHECK(
        grade_those(booth, false, judged(Verdict::reject), {"", "1"}).value.graded[0].graded.grade.class_id ==
        "1");
}

TEST_CASE(
    "withdrawn coupons and those that are graded so are left out; another grade that stands is not undone") {
    Booth booth;
    put_examined(booth, "T-1");
    put_examined(booth, "T-2");
    put_examined(booth, "T-3");
    booth.write([](Writing &w) { return withdraw_coupon(w, "T-3", "the wrong plate"); });
    booth.write([](Writing &w) { return grade_coupon(w, {"T-1", true, "", {}}); });
    const auto done = grade_those(booth, true).value;
    REQUIRE(done.graded.size() == 1);
    CHECK(done.graded[0].graded.mark == "T-2");
    REQUIRE(done.left_out.size() == 2);
    CHECK(done.left_out[0].why == "graded so already");
    CHECK(done.left_out[1].why == "withdrawn: the wrong plate");
    const auto before = booth.entries();
    CHECK(grade_those(booth, true).value.graded.empty());
    CHECK(booth.entries() == before);

    booth.write([](Writing &w) { return grade_coupon(w, {"T-1", false, "it was not his own", {}}); });
    CHECK_THAT(booth.refusal([&] { grade_those(booth, true); }).what(),
               says("T-1: it is graded failed already"));
    // Nor is one passed that had failed, also where that grade holds no more.
    put_examined(booth, "T-4", "crack l 0.2 at 2");
    booth.write([](Writing &w) { return grade_coupon(w, {"T-4", false, "", {}}); });
    booth.reopen(3, "T-4");
    booth.write([](Writing &w) { return withdraw_indication(w, "T-4", 1, "a scratch on the film"); });
    booth.finish(3, "T-4");
    CHECK(booth.verdict({}, "T-4") == Verdict::accept);
    CHECK_THAT(booth.refusal([&] { grade_those(booth, true); }).what(),
               says("T-4: it was graded failed; to pass it after that, grade it by itself"));
    // One that holds no more may be given anew.
    booth.finds("crack l 0.2 at 2", "T-2");
    CHECK(grade_those(booth, false, judged(Verdict::reject)).value.graded[0].graded.mark == "T-2");
    CHECK(grade_of(booth, "T-2") == "failed");
}
