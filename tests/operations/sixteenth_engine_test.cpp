// What engine 16 asks that those before it did not; what they said is replayed as it was.
#include "catch.hpp"
#include "operations/said_before.hpp"
#include "operations/welders.hpp"

using namespace beadbook;
using namespace beadbook::test;

TEST_CASE("a verdict of the fifteenth engine is replayed where who finished an exam welded the coupon") {
    Booth booth;
    booth.coupon("T-1", {{"welder", "L1"}});
    for (const Exam method : {Exam::VT, Exam::MT, Exam::RT}) booth.exam(method, Booth::found_none);
    CHECK(booth.verdict() == Verdict::accept);
    const std::string finisher = booth.office.coupon("T-1").exams.front().finished->by;
    booth.write([&](Writing &w) {
        WelderRequest request;
        request.mark = "L1";
        request.name = finisher;
        return enrol(w, request);
    });
    CHECK(booth.verdict() == Verdict::cannot_say);
    CouponState then = booth.office.coupon("T-1");
    for (auto &exam : then.exams) {
        CHECK_THAT(exam.open, says("who said what it found welded this coupon"));
        exam.open.clear();
    }
    const auto set = booth.office.criteria(then.record.get("criteria"));
    const Judgement said =
        judge(*set, then.record.facts(), then.exams_done(), then.found(), Vocabulary::shipped(), 15);
    CHECK(said.classes[*set->class_index(then.record.get("class"))].verdict == Verdict::accept);
    check_replayed(booth, *set, said, 15);
}
