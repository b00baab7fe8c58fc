// How the evaluator sees neighbours, groups, joined ones, areas and gaps, each on the smallest case.
#include "case.hpp"
#include "catch.hpp"
#include "measure/print.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::string one_rule(const std::string &lines) {
    return head() + "rules:\n  - {id: r, types: any, exams: RT, clause: c, standing: {house: x}, " + lines +
           "}\n";
}

std::string said_of(const std::string &lines, const std::string &coupon,
                    const std::vector<std::string> &log) {
    return judged(set_from(one_rule(lines)), {coupon, log}).verdicts().substr(2, 6);
}

const std::string accepted = "accept", rejected = "reject", left_open = "cannot";

} // namespace

TEST_CASE("a neighbour that does not count is no neighbour") {
    // "Nearest" is among imperfections that count and that the same exam found.
    const auto set = set_from(head() + R"(
relevance:
  - {id: small, types: porosity, exams: RT, ignore: size under 0.02 in, clause: c, standing: {house: x}}
rules:
  - {id: lone, types: porosity, exams: RT, where: nearest gap at least 1 in, measure: size, at most: 0.1 in, clause: c, standing: {house: x}}
  - {id: near, types: porosity, exams: RT, where: nearest gap under 1 in, measure: size, at most: 0.05 in, clause: c, standing: {house: x}}
  - {id: other, types: any, except: porosity, exams: [VT, RT], allowed: no limit, clause: c, standing: {house: x}}
  - {id: fillet, types: fillet size, exams: [VT, RT], measure: size, at least: 0.01 in, clause: c, standing: {house: x}}
)");
    const auto said = [&](const std::string &other) {
        return judged(set, {"", {"RT gas pore 0.08 at 2", other}}).verdicts();
    };
    const std::string lone = "A accept, B accept", near = "A reject, B reject",
                      cannot = "A cannot say, B cannot say";
    CHECK(said("RT gas pore 0.02 at 2.5") == near);
    CHECK(said("RT slag 0.01 at 2.5") == near);
    CHECK(said("RT gas pore 0.019 at 2.5") == lone);
    CHECK(said("RT gas pore 0.019") == lone); // wherever it lies
    CHECK(said("VT undercut 0.1 at 2.5") == lone);
    CHECK(said("RT fillet size 0.25 at 2.5") == lone);
    CHECK(said("RT gas pore at 2.5") == cannot); // it may count
    CHECK(said("RT gas pore at 4") == cannot);   // its own size is not known
    CHECK(said("RT gas pore 0.05") == cannot);
    CHECK_FALSE(load_criteria(head() + R"(
relevance:
  - {id: alone, types: porosity, exams: RT, ignore: nearest gap over 1 in, clause: c, standing: {house: x}}
rules:
  - {id: r, types: porosity, exams: RT, allowed: none, clause: c, standing: {house: x}}
)")
                    .set);
}

TEST_CASE("a group has a least number of members") {
    const std::string four =
        "measure: sum of size, linked: gap at most 0.1 in, least group: 4, at most: 0.1 in";
    std::vector<std::string> line{"RT gas pore 0.05 at 1", "RT gas pore 0.05 at 1.1",
                                  "RT gas pore 0.05 at 1.2"};
    CHECK(said_of(four, "", line) == accepted); // three are no group, whatever they sum to
    line.push_back("RT gas pore 0.05");         // somewhere, perhaps in their line
    CHECK(said_of(four, "", line) == left_open);
    line.back() = "RT gas pore 0.05 at 1.4";
    CHECK(said_of(four, "", line) == accepted);
    line.back() = "RT gas pore 0.05 at 1.35";
    CHECK(said_of(four, "", line) == rejected);
    CHECK(judged(set_from(one_rule(four)), {"", line}).sentences("A") ==
          "#1, #2, #3 and #4 gas pore (RT) from 1 in to 1.4 in: sum of size in one line of 4 or more (gap at "
          "most "
          "0.1 in) "
          "is 0.2 in, limit 0.1 in: over by 0.1 in.\n");
    // Over the datum of a girth weld.
    CHECK(said_of(four, "weld-length=8in seam=girth",
                  {"RT gas pore 0.05 at 7.8", "RT gas pore 0.05 at 7.9", "RT gas pore 0.05 at 0",
                   "RT gas pore 0.05 at 0.1"}) == rejected);
    for (const std::string bad :
         {"linked: gap at most 0.1 in, least group: 1", "linked: gap at most 0.1 in, least group: some",
          "window: 1 in, least group: 4"}) {
        INFO(bad);
        CHECK_FALSE(load_criteria(one_rule("measure: sum of size, at most: 1 in, " + bad)).set);
    }
}

TEST_CASE("a gap with 'where' keeps open what a rule would accept") {
    const auto set = set_from(head() + R"(
rules:
  - {id: r, types: any, exams: RT, measure: length, at most: 0.5 in, clause: c, standing: {house: x}}
gaps:
  - {text: the page on long ones was not read, types: inclusion, exams: RT, where: length at least 5 x width}
)");
    CHECK(judged(set, {"", {"RT slag 0.1x0.03"}}).verdicts() == "A accept, B accept");
    CHECK(judged(set, {"", {"RT slag 0.1x0.02"}}).verdicts() == "A cannot say, B cannot say");
    CHECK(judged(set, {"", {"RT slag 0.6x0.02"}}).verdicts() == "A reject, B reject");
    CHECK(judged(set, {"", {"RT worm-hole 0.1x0.02"}}).verdicts() == "A accept, B accept");
    CHECK(
        judged(set, {"", {"RT slag 0.1x0.02 at 1"}}).sentences("A") ==
        "#1 slag inclusion (RT) from 1 in to 1.1 in: the rules of this set are not all that speaks of it, a "
        "known gap: the "
        "page on long ones was not read.\n");
    CHECK(
        judged(set, {"", {"RT slag l 0.1 at 1"}}).sentences("A") ==
        "#1 slag inclusion (RT) from 1 in to 1.1 in: whether a known gap bears on it hangs on the width: the "
        "page on long "
        "ones was not read.\n");
}

TEST_CASE("neighbours near each other both ways round a girth weld are one ring") {
    const auto set = set_from(head() + R"(
merge:
  - {id: m, types: any, exams: VT, when: gap under smaller size, clause: c, standing: {house: x}}
rules:
  - {id: r, types: any, exams: VT, measure: length, at most: 7.95 in, clause: c, standing: {house: x}}
)");
    const std::string girth = "weld-length=8in seam=girth", straight = "weld-length=8in seam=straight";
    const std::vector<std::string> halves{"VT undercut l 3.95 at 0", "VT undercut l 3.95 at 4"};
    CHECK(judged(set, {straight, halves}).verdicts() == "A accept, B accept"); // 7.95
    const auto ring = judged(set, {girth, halves});
    CHECK(ring.verdicts() == "A reject, B reject");
    CHECK(ring.judgement.classes[0].findings[0].measured == Exact(8 * nm_per_inch));
    // Gaps of 0.02 and 0.08, and the smaller is 0.05: near over one of them only.
    CHECK(judged(set, {girth, {"VT undercut l 7.85 at 0", "VT undercut l 0.05 at 7.87"}}).verdicts() ==
          "A accept, B accept");
    // Alone it is near itself only, which joins nothing.
    CHECK(judged(set, {girth, {"VT undercut l 7.9 at 0"}}).verdicts() == "A accept, B accept");
    // Overlapping both ways it is no longer than the weld.
    CHECK(judged(set, {girth, {"VT undercut l 4.5 at 0", "VT undercut l 4.5 at 4"}})
              .judgement.classes[0]
              .findings[0]
              .measured == Exact(8 * nm_per_inch));
}

TEST_CASE("the least allowed is asked of every part of a joined one") {
    const auto set = set_from(head() + R"(
merge:
  - {id: m, types: any, exams: VT, when: gap at most 0.1 in, clause: c, standing: {house: x}}
rules:
  - {id: r, types: incorrect weld toe, exams: VT, measure: angle, at least: 110 deg, clause: c, standing: {house: x}}
)");
    const std::string blunt = "VT toe angle l 0.5 angle 150 at 1.05",
                      sharp = "VT toe angle l 0.5 angle 100 at 0.5";
    CHECK(judged(set, {"", {sharp}}).verdicts() == "A reject, B reject");
    CHECK(judged(set, {"", {sharp, blunt}}).verdicts() == "A reject, B reject");
    CHECK(judged(set, {"", {"VT toe angle l 0.5 angle 120 at 0.5", blunt}}).verdicts() ==
          "A accept, B accept");
    CHECK(judged(set, {"", {"VT toe angle l 0.5 at 0.5", blunt}}).verdicts() == "A cannot say, B cannot say");
}

TEST_CASE("an area that nobody measured goes by the shape") {
    const auto area = [](const std::string &line) {
        const auto c = judged(set_from(one_rule("allowed: no limit")), {"", {line}});
        const Indication &i = c.indications.at(0);
        return i.measures.has(Quantity::area) ? print(i.measures[Quantity::area], Dimension::area, Unit::inch)
                                              : std::string("unknown");
    };
    const std::string circle = area("RT gas pore 0.04"), box = area("RT slag 0.16x0.05 area 0.0016");
    for (const std::string line :
         {"gas pore 0.04x0.04", "gas pore s 0.04 w 0.04", "shrinkage cavity 0.04x0.04", "slag 0.04x0.04",
          "slag 0.04", "worm-hole 0.04x0.04"}) {
        INFO(line);
        CHECK(area("RT " + line) == circle);
    }
    CHECK(box == "0.0016 in2");
    CHECK(area("RT gas pore 0.20x0.008") == box); // long: the rectangle, whatever it is called
    CHECK(area("RT slag 0.20x0.008") == box);
    CHECK(area("RT slag 0.12x0.04") != area("RT slag 0.1201x0.04"));
    CHECK(area("RT worm-hole 0.04") == "unknown"); // how wide is it?
    CHECK(area("RT slag l 0.04") == "unknown");
}

TEST_CASE("a verdict of an older engine is taken again by its habits") {
    // Form 2 of a verdict keeps the engine's number; 3 left rings open and counted every neighbour.
    const auto by = [](int engine, const JudgedCase &c) {
        return name_of(judge(*c.set, c.coupon, c.exams, c.indications, Vocabulary::shipped(), engine)
                           .classes[0]
                           .verdict);
    };
    const std::string any = "types: any, exams: RT, clause: c, standing: {house: x}";
    const auto ring =
        judged(set_from(head() + "merge:\n  - {id: m, " + any + ", when: gap under smaller size}\nrules:\n" +
                        "  - {id: r, " + any + ", measure: length, at most: 7.95 in}\n"),
               {"weld-length=8in seam=girth", {"RT slag l 3.95 at 0", "RT slag l 3.95 at 4"}});
    CHECK(by(4, ring) == "reject");
    CHECK(by(3, ring) == "accept");
    const auto lone = judged(set_from(head() + "relevance:\n  - {id: i, " + any +
                                      ", ignore: size under 0.02 in}\nrules:\n" + "  - {id: r, " + any +
                                      ", where: nearest gap under 1 in, allowed: none}\n" + "  - {id: s, " +
                                      any + ", allowed: no limit}\n"),
                             {"", {"RT slag 0.1 at 2", "RT slag 0.01 at 2.2"}});
    CHECK(by(4, lone) == "accept");
    CHECK(by(3, lone) == "reject");
    const auto toe =
        judged(set_from(head() + "merge:\n  - {id: m, " + any + ", when: gap at most 0.1 in}\nrules:\n" +
                        "  - {id: r, " + any + ", measure: angle, at least: 110 deg}\n"),
               {"", {"RT toe angle l 0.5 angle 100 at 0.5", "RT toe angle l 0.5 angle 150 at 1.05"}});
    CHECK(by(4, toe) == "reject");
    CHECK(by(3, toe) == "accept");
    Indication round =
        judged(set_from(one_rule("allowed: no limit")), {"", {"RT worm-hole 0.04x0.04"}}).indications.at(0);
    const Exact circle = round.measures[Quantity::area];
    round.area_by_type(Vocabulary::shipped());
    CHECK(Exact(round.measures[Quantity::area]) > circle);
    Indication measured =
        judged(set_from(one_rule("allowed: no limit")), {"", {"RT slag 0.04x0.02 area 0.0007"}})
            .indications.at(0);
    const Exact said = measured.measures[Quantity::area];
    measured.area_by_type(Vocabulary::shipped());
    CHECK(Exact(measured.measures[Quantity::area]) == said);
}
