// What a class is silent on stays open; a dimension's size is not its length; a lone find has no neighbour.
#include "case.hpp"
#include "catch.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

const std::string of_clause = ", clause: c, standing: {house: x}}\n";

std::string verdicts(const std::string &rules, std::vector<std::string> log, const std::string &coupon = "") {
    return judged(set_from(head() + "rules:\n" + rules), {coupon, std::move(log)}).verdicts();
}

/// As the engine before did.
std::string before_open_silence(const JudgedCase &c) {
    std::vector<Indication> found = c.indications;
    for (auto &one : found) one.length_by_size(Vocabulary::shipped());
    JudgedCase out = c;
    out.judgement =
        judge(*c.set, c.coupon, c.exams, found, Vocabulary::shipped(), first_with_open_silence - 1);
    return out.verdicts();
}

} // namespace

TEST_CASE("what a class does not say stays open, whatever else accepts the find") {
    const std::string free = "  - {id: free, types: porosity, exams: RT, allowed: no limit" + of_clause;
    const auto silent = [&](const std::string &word) {
        return free +
               "  - {id: r, types: gas pore, exams: RT, measure: size, at most: {A: 0.1 in, B: " + word +
               "}" + of_clause;
    };
    const std::vector<std::string> pore{"RT gas pore 0.05 at 1"}, large{"RT gas pore 0.2 at 1"};
    CHECK(verdicts(silent("not said"), pore) == "A accept, B cannot say");
    CHECK(verdicts(silent("does not apply"), pore) == "A accept, B accept");
    CHECK(verdicts(silent("not said"), large) == "A reject, B cannot say");
    CHECK(verdicts(silent("not said"), {"RT worm-hole 0.05 at 1"}) == "A accept, B accept");
    // Another rule still rejects, and a rule that does not apply covers nothing.
    const std::string none = "  - {id: none, types: porosity, exams: RT, allowed: none" + of_clause;
    CHECK(verdicts(silent("not said") + none, pore) == "A reject, B reject");
    CHECK(
        verdicts("  - {id: r, types: gas pore, exams: RT, allowed: {A: none, B: does not apply}" + of_clause,
                 pore) == "A reject, B cannot say");
    const auto one = judged(set_from(head() + "rules:\n" + silent("not said")), {"", pore});
    CHECK(before_open_silence(one) == "A accept, B accept");
    CHECK(one.sentences("B") ==
          "#1 gas pore (RT) from 1 in to 1.05 in: this set does not say what class B allows.\n");
    // A rule that may not speak of it at all keeps it open too.
    CHECK(verdicts(free +
                       "  - {id: r, types: gas pore, exams: RT, where: depth over 0.1 in, allowed: not said" +
                       of_clause,
                   pore) == "A cannot say, B cannot say");
}

TEST_CASE("a rule that counts borderlines is open where its class is silent") {
    const auto combined = [](const std::string &limit) {
        return "  - {id: p, types: porosity, exams: RT, measure: size, at most: 0.1 in" + of_clause +
               "  - {id: s, types: inclusion, exams: RT, measure: length, at most: 0.1 in" + of_clause +
               "  - {id: both, combine: [p, s], borderline: 90 %, at most: {A: 1, B: " + limit + "}" +
               of_clause;
    };
    const std::vector<std::string> two{"RT gas pore 0.095 at 1", "RT slag 0.095 at 3"};
    CHECK(verdicts(combined("not said"), two) == "A reject, B cannot say");
    CHECK(verdicts(combined("a person decides"), two) == "A reject, B cannot say");
    CHECK(verdicts(combined("does not apply"), two) == "A reject, B accept");
    CHECK(verdicts(combined("not said"), {"RT gas pore 0.05 at 1"}) == "A accept, B accept");
}

TEST_CASE("the length of a dimension is how long it is so along the weld, not its size") {
    const std::string small =
        "  - {id: r, types: fillet size, exams: VT, where: size under 0.3 in, measure: sum "
        "of length, window: whole weld, at most: {A: 1 in, B: 2.4 in}" +
        of_clause + "  - {id: s, types: fillet size, exams: VT, allowed: no limit" + of_clause;
    CHECK(verdicts(small, {"VT fillet size 0.25 from 1 to 4"}) == "A reject, B reject");
    CHECK(verdicts(small, {"VT fillet size s 0.25 l 2.4 at 1"}) == "A reject, B accept");
    CHECK(verdicts(small, {"VT fillet size s 0.25 l 0.9 at 1", "VT fillet size s 0.2 l 0.2 at 5"}) ==
          "A reject, B accept");
    CHECK(verdicts(small, {"VT fillet size s 0.25 l 0.9"}) == "A accept, B accept");
    CHECK(verdicts(small, {"VT fillet size 0.3 from 1 to 4"}) == "A accept, B accept");
    const auto unknown = judged(set_from(head() + "rules:\n" + small), {"", {"VT fillet size 0.25 at 1"}});
    CHECK(unknown.verdicts() == "A cannot say, B cannot say");
    CHECK(unknown.sentences("A").find("cannot be decided without the length") != std::string::npos);
    CHECK(before_open_silence(unknown) == "A accept, B accept"); // the older one took the size for it
    const auto stretch = judged(unknown.set, {"", {"VT fillet size 0.25 from 1 to 4"}});
    CHECK(before_open_silence(stretch) == "A accept, B accept");
}

TEST_CASE("a lone find without a place has no neighbour") {
    const std::string lone =
        "  - {id: r, types: porosity, exams: RT, where: nearest gap at least 1 in, measure: size, at most: "
        "0.1 in" +
        of_clause + "  - {id: s, types: porosity, exams: RT, where: nearest gap under 1 in, allowed: none" +
        of_clause;
    CHECK(verdicts(lone, {"RT gas pore 0.05"}) == "A accept, B accept");
    CHECK(verdicts(lone, {"RT gas pore 0.15"}) == "A reject, B reject");
    CHECK(verdicts(lone, {"RT gas pore 0.05", "RT gas pore 0.05 at 3"}) == "A cannot say, B cannot say");
    // What another exam found, and a dimension, are no neighbours.
    CHECK(verdicts(lone + "  - {id: t, types: [fillet size, porosity], exams: VT, allowed: no limit" +
                       of_clause,
                   {"RT gas pore 0.05", "VT gas pore 0.05", "VT fillet size 0.25"}) == "A accept, B accept");
    CHECK(before_open_silence(judged(set_from(head() + "rules:\n" + lone), {"", {"RT gas pore 0.05"}})) ==
          "A cannot say, B cannot say");
}
