#include "report/keeping_document.hpp"

#include "catch.hpp"
#include "render/text.hpp"

using namespace beadbook;

namespace {

using What = ReplayFault::What;

ReplayFault verdict_fault(What what, const std::string &was, const std::string &now) {
    ReplayFault f;
    f.what = what;
    f.subject = "T-1";
    f.entry = 6;
    f.part = "A";
    f.was = was;
    f.now = now;
    return f;
}

Verified sound() {
    Verified v;
    v.chain.entries = 12;
    v.chain.head = std::string(64, 'a');
    return v;
}

} // namespace

TEST_CASE("each fault of a replay says whose it is and what differs") {
    CHECK(sentence(verdict_fault(What::verdict, "accept", "reject")) ==
          "verdict in entry 6 (coupon T-1): class A was 'accept' and is now 'reject'");
    CHECK(sentence(verdict_fault(What::verdict, "", "reject")) ==
          "verdict in entry 6 (coupon T-1): class A was not judged and is now 'reject'");
    CHECK(sentence(verdict_fault(What::verdict, "accept", "")) ==
          "verdict in entry 6 (coupon T-1): class A was 'accept' and is no class of its criteria");
    CHECK(sentence(verdict_fault(What::findings, "reject", "reject")) ==
          "verdict in entry 6 (coupon T-1): class A is 'reject' as it was, but for other reasons or by other "
          "numbers");
    CHECK(sentence(verdict_fault(What::text_missing, "", "")) ==
          "verdict in entry 6 (coupon T-1): its criteria are missing");
    CHECK(sentence(verdict_fault(What::text_broken, "", "")) ==
          "verdict in entry 6 (coupon T-1): its criteria no longer load");
    ReplayFault other = verdict_fault(What::verdict, "accept", "reject");
    other.other_engine = true;
    CHECK(sentence(other) ==
          "verdict in entry 6 (coupon T-1): class A was 'accept' and is now 'reject'; it was taken by "
          "another version of the evaluator");
    other.other_vocabulary = true;
    CHECK_THAT(sentence(other), says("another version of the evaluator and another list of imperfections"));
    ReplayFault range;
    range.family = Family::welder;
    range.subject = "W1";
    range.number = 2;
    range.what = What::range;
    CHECK(sentence(range) == "qualification 2 of welder W1: its range comes out otherwise now");
    range.what = What::text_missing;
    CHECK(sentence(range) == "qualification 2 of welder W1: its rules are missing");
}

TEST_CASE("a verification tells what holds, what was taken again and what to note") {
    Verified v = sound();
    CHECK(faults_of(v).empty());
    CHECK_THAT(text(document_of(v)), says("12 entries hold. Head: " + v.chain.head + "\n"));
    CHECK_THAT(text(document_of(v)), says("Note the number and the head elsewhere"));
    CHECK_THAT(text(document_of(v)), !says("judged again"));
    v.replay.emplace();
    v.replay->verdicts = 3;
    v.replay->ranges = 1;
    CHECK_THAT(text(document_of(v)),
               says("3 verdicts judged again and 1 range worked out again, all the same"));
    v.replay->faults.push_back(verdict_fault(What::verdict, "accept", "reject"));
    v.other_head = std::string(64, 'b');
    REQUIRE(faults_of(v).size() == 2);
    CHECK(faults_of(v)[1] == "the record ends with " + v.chain.head +
                                 ", not with the hash you gave: entries were cut off or added since");
    CHECK_THAT(text(document_of(v)), says("not all the same"));
    Verified broken = sound();
    broken.chain.faults = {"entry 3 does not hold"};
    CHECK_THAT(text(document_of(broken)), says("entry 3 does not hold"));
    CHECK_THAT(text(document_of(broken)), !says("entries hold"));
}
