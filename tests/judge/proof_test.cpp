// What an accept rests on, and what contradicts itself, each on the smallest case.
#include "case.hpp"
#include "catch.hpp"

#include <algorithm>

using namespace beadbook;
using namespace beadbook::test;

namespace {

const std::string proof_rules =
    "required exams:\n  - {id: look, one of: [VT], clause: \"1\", standing: {read: p}}\n"
    "relevance:\n  - {id: tiny, types: any, exams: RT, ignore: size up to 0.01 in, clause: \"2\", standing: "
    "{memory: m}}\n"
    "rules:\n"
    "  - {id: pores, types: porosity, exams: RT, measure: size, at most: T/2, clause: \"3\", standing: "
    "{read: "
    "p}}\n"
    "  - {id: apart, types: porosity, exams: RT, measure: gap, at least: 0.1 in, clause: \"4\", standing: "
    "{house: x}}\n"
    "  - {id: thick, types: porosity, exams: RT, when: T over 1 in, allowed: none, clause: \"5\", standing: "
    "{read: p}}\n"
    "  - {id: cap, types: excess weld metal, exams: VT, measure: height, at most: 0.1 in, must be measured: "
    "yes, clause: \"6\", standing: {read: p}}\n";

JudgedCase proven_case() {
    return judged(set_from(head() + proof_rules), {"thickness=0.2in weld-length=8in",
                                                   {"RT gas pore 0.05 at 1", "RT gas pore 0.04 at 2",
                                                    "RT gas pore 0.01 at 5", "VT excess weld metal h 0.05"}});
}

const Finding *contradiction_of(const Judgement &judgement, int entry) {
    const auto &all = judgement.classes[0].findings;
    const auto found = std::find_if(all.begin(), all.end(), [&](const Finding &f) {
        return f.kind == Finding::Kind::contradiction && f.indications == std::vector{entry};
    });
    return found == all.end() ? nullptr : &*found;
}

} // namespace

TEST_CASE("an accept names its exams, each entry before each rule, and the dimensions wanted", "[proof]") {
    const JudgedCase c = proven_case();
    REQUIRE(c.verdicts() == "A accept, B accept");
    const Proof &proof = *c.judgement.classes[0].proof;
    REQUIRE(proof.exams.size() == 1);
    CHECK(proof.exams[0].required == 0);
    CHECK(proof.exams[0].method == Exam::VT);
    const auto row = [&](int entry, int rule) {
        const auto found =
            std::find_if(proof.entries.begin(), proof.entries.end(),
                         [&](const ProvenEntry &r) { return r.entry == entry && r.rule == rule; });
        REQUIRE(found != proof.entries.end());
        return *found;
    };
    CHECK(row(1, 0).measured == Exact(nm_per_inch / 20));
    CHECK(row(1, 0).limit == Exact(nm_per_inch / 10));
    CHECK(row(2, 1).how == ProvenEntry::How::within);
    CHECK(row(2, 1).measured == Exact(nm_per_inch - nm_per_inch / 20));
    CHECK(row(3, 0).how == ProvenEntry::How::not_relevant);
    CHECK(proof.entries.size() == 6);
    CHECK(proof.not_applying == std::vector{2});
    CHECK(proof.measured == std::vector{ProvenDimension{3, 4}});
    const StandingCount count = standings_behind(proof, *c.set, 0);
    CHECK(count.read == 3);
    CHECK(count.memory == 1);
    CHECK(count.house == 1);
    CHECK(facts_behind(proof, *c.set, 0) == lack_of(Quantity::thinner));
}

TEST_CASE("engines before the fourth judge without a proof, and see no contradiction", "[proof]") {
    JudgedCase c = proven_case();
    c.indications[0].measures.set(Quantity::width, Exact(nm_per_inch));
    CHECK(contradiction_of(judge(*c.set, c.coupon, c.exams, c.indications), 1));
    const Judgement old = judge(*c.set, c.coupon, c.exams, c.indications, Vocabulary::shipped(), 3);
    CHECK(old.classes[0].verdict == Verdict::accept);
    CHECK_FALSE(old.classes[0].proof);
}

TEST_CASE("what cannot both be true keeps every class open, to the nanometre", "[proof]") {
    const JudgedCase whole = proven_case();
    const auto after = [&](auto change) {
        JudgedCase c = proven_case();
        change(c);
        c.judgement = judge(*c.set, c.coupon, c.exams, c.indications);
        return c;
    };
    const Exact length(whole.indications[0].measures[Quantity::length]);
    CHECK(after([&](JudgedCase &c) { c.indications[0].measures.set(Quantity::width, length); }).verdicts() ==
          "A accept, B accept");
    const JudgedCase wide =
        after([&](JudgedCase &c) { c.indications[0].measures.set(Quantity::width, length + 1); });
    CHECK(wide.verdicts() == "A cannot say, B cannot say");
    CHECK_THAT(wide.sentences("A"), says("contradict each other"));
    CHECK(contradiction_of(wide.judgement, 1));
    const std::int64_t weld = 8 * nm_per_inch;
    const auto ends_at = [&](std::int64_t end) {
        return after([&](JudgedCase &c) {
            c.indications[1].place = Span{{end - c.indications[1].measures[Quantity::length]}, {end}};
        });
    };
    CHECK(ends_at(weld).verdicts() == "A accept, B accept");
    CHECK(contradiction_of(ends_at(weld + 1).judgement, 2));
    CHECK(contradiction_of(after([](JudgedCase &c) { c.indications[0].place->to.nm += 1; }).judgement, 1));
    const JudgedCase exam = after([](JudgedCase &c) {
        for (auto &one : c.exams) one.contradicts = one.method == Exam::RT;
    });
    CHECK(exam.verdicts() == "A cannot say, B cannot say");
    CHECK_THAT(exam.sentences("A"), says("The RT was finished with fewer finds than are on record under it"));
}

TEST_CASE("a reject stays a reject beside a contradiction", "[proof]") {
    JudgedCase c = proven_case();
    c.indications[0].measures.set(Quantity::width, Exact(nm_per_inch));
    c.indications[1].measures.set(Quantity::size, Exact(nm_per_inch));
    CHECK(judge(*c.set, c.coupon, c.exams, c.indications).classes[0].verdict == Verdict::reject);
}
