// A criteria set bound to a coupon's facts: what is decided once, and that nothing comes out otherwise.
#include "case.hpp"
#include "catch.hpp"
#include "judge/bound_set.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

BoundSet bound(const JudgedCase &of) { return {*of.set, of.coupon, Vocabulary::shipped(), engine_number}; }

const std::string rules = R"(
rules:
  - {id: far, types: any, exams: VT, measure: gap, at least: {A: 3 x larger size, B: larger size + T}, clause: c, standing: {house: x}}
  - {id: third, types: any, exams: VT, measure: size, at most: {A: none, B: T/3}, clause: c, standing: {house: x}}
  - {id: thick, types: any, exams: VT, when: T over 1 in, measure: size, at most: 1 in, clause: c, standing: {house: x}}
  - {id: inch, types: any, exams: VT, measure: sum of length, window: 10 x T, at most: 1 in, clause: c, standing: {house: x}}
)";

} // namespace

TEST_CASE("limits of the coupon's own quantities are computed when a set is bound", "[judge]") {
    const auto one = judged(set_from(head() + rules),
                            {"joint=groove thickness=0.1in weld-length=0.5in", {"VT pore 0.03 at 0.1"}});
    const BoundSet set = bound(one);
    Environment::Values pair;
    pair.set(Quantity::larger_size, Exact(1'000'000));
    const Environment measures{one.coupon.values, &pair};

    CHECK(set.limit(0, 0).of(measures).value == Exact(3'000'000));
    CHECK(set.limit(0, 1).of(measures).value == Exact(1'000'000 + 2'540'000));
    CHECK(set.limit(1, 1).of(measures).value == Exact::fraction(2'540'000, 3));
    CHECK(set.rule(1).classes(Limit::Kind::none) == 1u);

    pair.forget(Quantity::larger_size);
    CHECK(set.limit(0, 0).of(measures).missing == lack_of(Quantity::larger_size));
    CHECK(set.rule(2).applies.truth == Truth::no);
    // Ten times T is longer than the weld.
    CHECK(set.rule(3).window(0).width == 25'400'000);
    CHECK(set.rule(3).window(0).whole);
}

TEST_CASE("what a fact that is missing would decide stays open when a set is bound", "[judge]") {
    const auto one = judged(set_from(head() + rules), {"joint=groove", {"VT pore 0.03 at 0.1"}});
    const BoundSet set = bound(one);
    CHECK(set.rule(2).applies.truth == Truth::unknown);
    CHECK(set.rule(2).applies.lacks == lack_of(Quantity::thinner));
    CHECK(set.limit(1, 1).of_coupon().missing == lack_of(Quantity::thinner));
    CHECK(set.rule(3).window(0).missing == lack_of(Quantity::thinner));
}

TEST_CASE("a set bound once judges every coupon with these facts", "[judge]") {
    const std::string facts = "joint=groove thickness=0.25in weld-length=8in material=steel process=GTAW "
                              "magnetic=yes";
    const auto few = judged("mil-hdbk-1890-table-3", {facts, {"RT gas pore 0.05 at 1"}});
    const auto many =
        judged("mil-hdbk-1890-table-3",
               {facts, {"RT gas pore 0.09 at 1", "RT slag inclusion 0.05 at 1.2", "RT crack at 3"}});
    const BoundSet set = bound(few);
    for (const auto &one : {few, many}) {
        const Judgement by = judge(set, one.exams, one.indications);
        REQUIRE(by.classes.size() == one.judgement.classes.size());
        for (std::size_t c = 0; c < by.classes.size(); ++c) {
            CHECK(by.classes[c].verdict == one.judgement.classes[c].verdict);
            CHECK(by.classes[c].proof == one.judgement.classes[c].proof);
            CHECK(by.classes[c].findings.size() == one.judgement.classes[c].findings.size());
        }
    }
    CHECK(few.judgement.classes[0].verdict == Verdict::accept);
    CHECK(many.judgement.classes[2].verdict == Verdict::reject);
}
