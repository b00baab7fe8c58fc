// What a reason asks for is something that somebody can give, of the finds that lack it.
#include "case.hpp"
#include "catch.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::string asked_of(const std::string &rules, const std::vector<std::string> &log) {
    const auto set = set_from("set: test\ntitle: Test\nedition: test\nunits: in\nclasses: [A]\nscope: not "
                              "read\nrules:\n" +
                              rules);
    const auto of = judged(set, {"weld-length=12in", log});
    CHECK(of.verdicts() == "A cannot say");
    return of.sentences("A");
}

const std::string of_clause = ", clause: c, standing: {house: x}}\n";
const std::string spacing = "  - {id: apart, title: Spacing, types: gas pore, exams: RT, measure: gap, at "
                            "least: 2 x larger size" +
                            of_clause;

} // namespace

TEST_CASE("of several finds the reason names those that nobody said the place or size of") {
    CHECK_THAT(asked_of(spacing, {"RT gas pore 0.1 at 2", "RT gas pore 0.1 at 6", "RT gas pore 0.1"}),
               says("Spacing cannot be decided without the place on the weld of #3."));
    CHECK_THAT(asked_of(spacing, {"RT gas pore at 2", "RT gas pore 0.1 at 6"}),
               says("without the size of #1.") && !says("larger size cannot") && !says("the larger size."));
    const std::string sum = "  - {id: sum, title: Sum, types: slag inclusion, exams: RT, measure: sum of "
                            "length, window: 3 in, at most: 1/2 in" +
                            of_clause;
    CHECK_THAT(asked_of(sum, {"RT slag inclusion l 0.1 at 2", "RT slag inclusion at 3"}),
               says("Sum cannot be decided without the length of #2."));
}

TEST_CASE("a nearest gap that is not known is asked for by the places that nobody told") {
    const std::string lone =
        "  - {id: lone, title: Lone pore, types: gas pore, exams: RT, where: nearest gap "
        "at least 1 in, measure: size, at most: 1/4 in" +
        of_clause +
        "  - {id: near, title: Near pore, types: gas pore, exams: RT, where: nearest gap "
        "under 1 in, measure: size, at most: 1/8 in" +
        of_clause;
    CHECK_THAT(asked_of(lone, {"RT gas pore 0.2 at 2", "RT gas pore 0.05"}),
               says("Near pore") && says("the place on the weld of #2") && !says("the nearest gap"));
}

TEST_CASE("a nearest gap that is not known is asked for by the ends that nobody told") {
    const std::string lone =
        "  - {id: lone, title: Lone slag, types: slag inclusion, exams: RT, where: nearest gap "
        "at least 1 in, measure: depth, at most: 1/4 in" +
        of_clause;
    CHECK_THAT(asked_of(lone, {"RT slag inclusion d 0.3 at 2", "RT slag inclusion d 0.3 at 6"}),
               says("the length (or from .. to) of #1 and #2") && !says("the nearest gap"));
    CHECK_THAT(asked_of(lone, {"RT slag inclusion d 0.3 at 2", "RT slag inclusion d 0.3 l 0.2 at 6"}),
               says("the length (or from .. to) of #1"));
    CHECK_THAT(asked_of(lone, {"RT slag inclusion d 0.3 at 2", "RT slag inclusion d 0.3"}),
               says("the place on the weld of #2") && says("the length (or from .. to) of #1"));
}

TEST_CASE("of several known gaps the reason quotes the one that names the find most closely") {
    const std::string gaps =
        "gaps:\n  - {text: tables were not read, types: inclusion, exams: RT}\n  - {text: "
        "tungsten was not read, types: tungsten inclusion, exams: RT}\n";
    CHECK_THAT(asked_of(spacing + gaps, {"RT tungsten inclusion 0.1 at 2"}), says("tungsten was not read"));
    CHECK_THAT(asked_of(spacing + gaps, {"RT slag inclusion 0.1 at 2"}), says("tables were not read"));
}
