// Stored verdicts name the engine that took them; it is followed when they are taken again.
#include "case.hpp"
#include "catch.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

JudgedCase without_limit(const std::string &line) {
    return judged(set_from(head() +
                           "rules:\n  - {id: r, types: any, exams: RT, clause: c, standing: {house: x}, "
                           "allowed: no limit}\n"),
                  {"", {line}});
}

} // namespace

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
    Indication round = without_limit("RT worm-hole 0.04x0.04").indications.at(0);
    const Exact circle = round.measures[Quantity::area];
    round.area_by_type(Vocabulary::shipped());
    CHECK(Exact(round.measures[Quantity::area]) > circle);
    Indication measured = without_limit("RT slag 0.04x0.02 area 0.0007").indications.at(0);
    const Exact said = measured.measures[Quantity::area];
    measured.area_by_type(Vocabulary::shipped());
    CHECK(Exact(measured.measures[Quantity::area]) == said);
}
