// What engine 17 asks that those before it did not; what they said is replayed as it was.
#include "catch.hpp"
#include "operations/said_before.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

void measured_in_vain(Booth &booth) {
    booth.fillet();
    booth.exam(Exam::VT, [](ExamRequest &request) { request.incomplete = "gauge worn, not to be trusted"; });
    booth.log("fillet size 1/4in from 0in to 6in");
    booth.finish(1);
    booth.exam(Exam::VT, Booth::found_none);
}

} // namespace

TEST_CASE("a verdict of the sixteenth engine is replayed where only an exam measured that does not count") {
    Booth booth;
    measured_in_vain(booth);
    CHECK(booth.verdict() == Verdict::cannot_say);
    const CouponState then = booth.office.coupon("T-1");
    const auto set = booth.office.criteria("ufgs-15216n");
    const Judgement said =
        judge(*set, then.record.facts(), then.exams_done(), then.found(), Vocabulary::shipped(), 16);
    CHECK(said.classes[0].verdict == Verdict::accept);
    check_replayed(booth, *set, said, 16);
}

TEST_CASE("a dimension is measured once an exam that counts gives it, and a proof names that one") {
    Booth booth;
    measured_in_vain(booth);
    const auto judged = [&] { return judge_coupon(booth.office, booth.office.coupon("T-1"), {}); };
    const Finding finding = judged().judgement.classes[0].findings.at(0);
    CHECK(finding.kind == Finding::Kind::not_measured);
    CHECK(finding.indications == std::vector<int>{1});
    booth.reopen(2);
    // Nobody measures anew what an open exam may still give.
    booth.log("fillet size 1/4in from 0in to 6in", "T-1", 2);
    const Judged open = judged();
    for (const auto &f : open.judgement.classes[0].findings) CHECK(f.kind != Finding::Kind::not_measured);
    booth.finish(2);
    const Judged now = judged();
    REQUIRE(now.verdict() == Verdict::accept);
    REQUIRE(now.judgement.classes[0].proof->measured.size() == 1);
    CHECK(now.judgement.classes[0].proof->measured[0].entry == 2);
    Proof of_other = *now.judgement.classes[0].proof;
    of_other.measured[0].entry = 1;
    const auto lack =
        lack_in(of_other, *now.set, 0, now.coupon, now.exams, now.indications, Vocabulary::shipped());
    REQUIRE(lack);
    CHECK(lack->part == ProofPart::dimension);
}
