// What engine 15 asks that those before it did not; what they said is replayed as it was.
#include "catch.hpp"
#include "operations/said_before.hpp"

#include <algorithm>

using namespace beadbook;
using namespace beadbook::test;

TEST_CASE("a verdict of the fourteenth engine is replayed where what lies at the root was on the face") {
    Booth booth;
    booth.coupon("T-1", {{"criteria", "iso-5817"}, {"class", "B"}});
    booth.exam(Exam::VT);
    booth.write([](Writing &w) {
        return log_lines(w, {"T-1", 1, "excess penetration h 0.1mm w 2mm at 1in face", "line", true});
    });
    const CouponState then = booth.office.coupon("T-1");
    const auto set = booth.office.criteria("iso-5817");
    const auto says_contradiction = [&](const Judgement &said) {
        const auto &findings = said.classes[*set->class_index("B")].findings;
        return std::any_of(findings.begin(), findings.end(), [](const Finding &f) {
            return f.kind == Finding::Kind::contradiction && f.missing == lack_of(Attribute::side);
        });
    };
    const auto by = [&](int engine) {
        return judge(*set, then.record.facts(), then.exams_done(), then.found(), Vocabulary::shipped(),
                     engine);
    };
    CHECK(says_contradiction(by(15)));
    const Judgement said = by(14);
    CHECK_FALSE(says_contradiction(said));
    check_replayed(booth, *set, said, 14);
}
