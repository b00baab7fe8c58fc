// Windows, relevance and gaps by class; rules that reject only together; rules on the coupon; groups for a
// person.
#include "case.hpp"
#include "catch.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

const std::string by = ", clause: c, standing: {house: x}}\n";

JudgedCase tried(const std::string &text, std::vector<std::string> log, const std::string &coupon = "") {
    return judged(set_from(head() + text), {coupon, std::move(log)});
}
std::string refusal(const std::string &text) {
    std::string out;
    for (const auto &issue : load_criteria(head() + text).issues) out += issue.text + "\n";
    return out;
}

} // namespace

TEST_CASE("a window may differ by class") {
    const std::string set = "rules:\n  - {id: r, types: porosity, exams: RT, measure: sum of length, window: "
                            "{A: 1 in, B: 12 in}, at most: {A: 0.2 in, B: 0.3 in}" +
                            by;
    const std::vector<std::string> apart{"RT gas pore 0.16 at 1", "RT gas pore 0.16 at 5"};
    CHECK(tried(set, apart).verdicts() == "A accept, B reject");
    CHECK(tried(set, {"RT gas pore 0.11 at 1", "RT gas pore 0.11 at 1.5"}).verdicts() ==
          "A reject, B accept");
    CHECK(tried(set, apart).sentences("B").find("in any 12 in is 0.32 in, limit 0.3 in") !=
          std::string::npos);
    CHECK(
        refusal(
            "rules:\n  - {id: r, types: porosity, exams: RT, measure: count, window: {A: 1 in}, at most: 1" +
            by)
            .find("class 'B' is missing") != std::string::npos);
    const std::string kinds =
        "rules:\n  - {id: r, types: porosity, exams: RT, measure: count, window: {A: whole "
        "weld, B: \"1 in2, longest side 2 in\"}, at most: 1" +
        by;
    CHECK(tried(kinds, {"RT gas pore 0.1 at 1 across 0", "RT gas pore 0.1 at 7 across 0"}).verdicts() ==
          "A reject, B accept");
}

TEST_CASE("what is not relevant may hang on the class") {
    const std::string set = "relevance: [{id: small, types: porosity, exams: RT, classes: B, ignore: size at "
                            "most 0.05 in, clause: "
                            "c, standing: {house: x}}]\nrules:\n  - {id: r, types: porosity, exams: RT, "
                            "measure: count, window: 6 in, "
                            "at most: 1" +
                            by;
    const auto two = tried(set, {"RT gas pore 0.05 at 1", "RT gas pore 0.05 at 2"});
    CHECK(two.verdicts() == "A reject, B accept");
    REQUIRE(two.judgement.classes[1].proof);
    CHECK(two.judgement.classes[1].proof->entries[0].how == ProvenEntry::How::not_relevant);
    CHECK(tried(set, {"RT gas pore 0.06 at 1", "RT gas pore 0.05 at 2"}).verdicts() == "A reject, B accept");
    // What does not count for a class is no neighbour there.
    const std::string gaps =
        "relevance: [{id: small, types: porosity, exams: RT, classes: [B], ignore: size at "
        "most 0.05 in, clause: c, standing: {house: x}}]\nrules:\n  - {id: r, types: porosity, "
        "exams: RT, where: nearest gap under 1 in, allowed: none" +
        by + "  - {id: s, types: porosity, exams: RT, allowed: no limit" + by;
    CHECK(tried(gaps, {"RT gas pore 0.06 at 1", "RT gas pore 0.05 at 1.5"}).verdicts() ==
          "A reject, B accept");
    // A proof of the one class proves nothing for the other.
    const auto &proof = *two.judgement.classes[1].proof;
    const auto contradictions = proof.compared;
    CHECK(contradictions > 0);
    CHECK_FALSE(lack_in(proof, *two.set, 1, two.coupon, two.exams, two.indications));
    CHECK(lack_in(proof, *two.set, 0, two.coupon, two.exams, two.indications));
}

TEST_CASE("joined finds are not relevant only if each of them could be, whichever lies first") {
    const std::string set =
        "relevance: [{id: small, types: any, except: undercut, exams: RT, ignore: size at most 0.1 in, "
        "clause: "
        "c, standing: {house: x}}]\nmerge: [{id: m, types: any, exams: RT, when: gap under smaller size, "
        "clause: c, standing: {house: x}}]\nrules:\n  - {id: r, types: any, exams: RT, allowed: none" +
        by;
    const std::string pore = "RT gas pore 0.02 at ", group = "RT clustered porosity 0.02 at ",
                      undercut = "RT undercut 0.02 at ";
    CHECK(tried(set, {pore + "1", pore + "1.02"}).verdicts() == "A accept, B accept");
    for (const auto &other : {group, undercut}) {
        CHECK(tried(set, {pore + "1", other + "1.02"}).verdicts() == "A reject, B reject");
        CHECK(tried(set, {other + "1", pore + "1.02"}).verdicts() == "A reject, B reject");
    }
}

TEST_CASE("where no exam is asked for, one by which the set judges must be there") {
    const std::string set = "rules:\n  - {id: r, types: undercut, exams: VT, allowed: none" + by;
    CHECK(judged(set_from(head() + set), {"", {}, "VT"}).verdicts() == "A accept, B accept");
    const auto by_film = judged(set_from(head() + set), {"", {}, "RT"});
    CHECK(by_film.verdicts() == "A cannot say, B cannot say");
    CHECK_THAT(by_film.sentences("A"), says("No VT that counts is on record"));
}

TEST_CASE("an accept over a limit that rejects only together with another says so") {
    const std::string set =
        "rules:\n  - {id: depth, types: undercut, exams: VT, measure: depth, at most: 0.01 in" + by +
        "  - {id: sum, types: undercut, exams: VT, measure: sum of length, window: 12 in, at most: 2 in, "
        "reject only with: depth" +
        by;
    const auto deep = tried(set, {"VT undercut l 1.9 d 0.2 at 3"});
    CHECK(deep.verdicts() == "A accept, B accept");
    CHECK(deep.sentences("A").find("which is over too") == std::string::npos);
}

TEST_CASE("a gap may be one for some classes, coupons and shapes only") {
    const std::string set =
        "linear: {when: length over 3 x width, clause: c, standing: {house: x}}\nrules:\n  - "
        "{id: r, types: any, exams: RT, allowed: no limit" +
        by +
        "gaps:\n  - {text: lines were not read, types: inclusion, exams: RT, classes: A, when: "
        "joint is groove, shape: linear}\n";
    const std::vector<std::string> line{"RT slag 0.4x0.1 at 1"};
    CHECK(tried(set, line, "joint=groove").verdicts() == "A cannot say, B accept");
    CHECK(tried(set, line, "joint=fillet").verdicts() == "A accept, B accept");
    CHECK(tried(set, line).verdicts() == "A cannot say, B accept");
    CHECK(tried(set, {"RT slag 0.3x0.1 at 1"}, "joint=groove").verdicts() == "A accept, B accept");
    CHECK(tried(set, line, "joint=groove").sentences("A").find("lines were not read") != std::string::npos);
    CHECK(refusal("rules:\n  - {id: r, types: any, exams: RT, allowed: none" + by +
                  "gaps: [{text: t, classes: A}]\n")
              .find("say of which 'types'") != std::string::npos);
}

TEST_CASE("two rules that reject only together") {
    const std::string set =
        "rules:\n  - {id: wide, types: slag inclusion, exams: [RT, VT], measure: width, at most: "
        "T/2" +
        by +
        "  - {id: sum, types: slag inclusion, exams: [RT, VT], measure: sum of length, window: "
        "whole weld, at most: {A: T, B: 2 x T}, reject only with: wide" +
        by;
    const std::string thin = "thickness=0.2in weld-length=6in";
    CHECK(tried(set, {"RT slag l 0.3 w 0.1 at 1", "RT slag l 0.2 w 0.1 at 3"}, thin).verdicts() ==
          "A accept, B accept"); // long, and no wider than half
    CHECK(tried(set, {"RT slag l 0.15 w 0.11 at 1"}, thin).verdicts() == "A accept, B accept"); // wide only
    const auto both = tried(set, {"RT slag l 0.3 w 0.11 at 1"}, thin);
    CHECK(both.verdicts() == "A reject, B accept");
    CHECK(both.judgement.classes[0].findings.size() == 2);
    CHECK(both.sentences("A").find("together with wide, which is over too") != std::string::npos);
    CHECK(tried(set, {"RT slag l 0.5 w 0.11 at 1"}, thin).verdicts() == "A reject, B reject");
    // A nanometre decides each.
    CHECK(tried(set, {"RT slag l 0.2 w 0.11 at 1"}, thin).verdicts() == "A accept, B accept");
    CHECK(tried(set, {"RT slag l 0.20001 w 0.10001 at 1"}, thin).verdicts() == "A reject, B accept");
    // What is not known matters only where the other is over, or may be.
    CHECK(tried(set, {"RT slag l 0.15 at 1"}, thin).verdicts() == "A accept, B accept");
    CHECK(tried(set, {"RT slag l 0.3 at 1"}, thin).verdicts() == "A cannot say, B accept");
    CHECK(tried(set, {"RT slag l 0.3 w 0.11 at 1"}, "weld-length=6in").verdicts() ==
          "A cannot say, B cannot say");
    // One exam finds it wide, another long: neither finds both.
    CHECK(tried(set, {"RT slag l 0.3 w 0.1 at 1", "VT slag l 0.12 w 0.11 at 1"}, thin).verdicts() ==
          "A accept, B accept");
    // The accept says why; the gate refuses the row once the other rule is over as well.
    const auto wide = tried(set, {"RT slag l 0.15 w 0.11 at 1"}, thin);
    Proof proof = *wide.judgement.classes[0].proof;
    CHECK_FALSE(lack_in(proof, *wide.set, 0, wide.coupon, wide.exams, wide.indications));
    for (auto &row : proof.entries) row.how = ProvenEntry::How::alone;
    CHECK(lack_in(proof, *wide.set, 0, wide.coupon, wide.exams, wide.indications));

    CHECK(refusal("rules:\n  - {id: a, types: crack, exams: RT, allowed: none" + by +
                  "  - {id: b, types: crack, exams: RT, measure: length, at most: 1 in, reject only with: a" +
                  by)
              .find("both rules need a measure") != std::string::npos);
    CHECK(
        refusal(
            "rules:\n  - {id: b, types: crack, exams: RT, measure: length, at most: 1 in, reject only with: "
            "a" +
            by)
            .find("no rule above is called 'a'") != std::string::npos);
}

TEST_CASE("a rule on the coupon itself rejects without a find") {
    const std::string set =
        "rules:\n  - {id: bend, title: Bend tests, when: mechanical is failed, allowed: {A: "
        "none, B: does not apply}" +
        by + "  - {id: r, types: any, exams: VT, allowed: no limit" + by;
    CHECK(tried(set, {}, "mechanical=failed").verdicts() == "A reject, B accept");
    CHECK(tried(set, {}, "mechanical=passed").verdicts() == "A accept, B accept");
    CHECK(tried(set, {}).verdicts() == "A cannot say, B accept");
    CHECK(tried(set, {}, "mechanical=failed").sentences("A") ==
          "The coupon: Bend tests, not allowed where mechanical is failed.\n");
    CHECK(tried(set, {}).sentences("A") ==
          "Bend tests cannot be decided without the mechanical (results: did the bend, fracture "
          "or section tests pass?).\n");
    const std::string asks =
        "rules:\n  - {id: bend, when: mechanical is failed, allowed: {A: a person decides, B: "
        "not said}" +
        by;
    CHECK(tried(asks, {}, "mechanical=failed").verdicts() == "A cannot say, B cannot say");
    CHECK(tried(asks, {}, "mechanical=passed").verdicts() == "A accept, B accept");
    CHECK(refusal("rules:\n  - {id: bend, when: mechanical is failed, allowed: no limit" + by)
              .find("permits nothing here") != std::string::npos);
    CHECK(refusal("rules:\n  - {id: bend, when: mechanical is failed, measure: size, at most: 1 in" + by)
              .find("'types' is missing") != std::string::npos);
}

TEST_CASE("of neighbours in line a person is asked about the group only") {
    const std::string set =
        "rules:\n  - {id: r, types: porosity, exams: RT, measure: count, linked: gap at most 0.1 "
        "in, least group: 3, at most: {A: a person decides, B: no limit}" +
        by;
    const std::vector<std::string> two{"RT gas pore 0.05 at 1", "RT gas pore 0.05 at 1.1",
                                       "RT gas pore 0.05 at 3"};
    CHECK(tried(set, two).verdicts() == "A accept, B accept");
    std::vector<std::string> three = two;
    three.emplace_back("RT gas pore 0.05 at 1.2");
    const auto group = tried(set, three);
    CHECK(group.verdicts() == "A cannot say, B accept");
    REQUIRE(group.judgement.classes[0].findings.size() == 1);
    CHECK(group.judgement.classes[0].findings[0].indications == std::vector{1, 2, 4});
    // Without their places three may be a group, two are none.
    CHECK(tried(set, {"RT gas pore 0.05", "RT gas pore 0.05"}).verdicts() == "A accept, B accept");
    CHECK(tried(set, {"RT gas pore 0.05", "RT gas pore 0.05", "RT gas pore 0.05"}).verdicts() ==
          "A cannot say, B accept");
}
