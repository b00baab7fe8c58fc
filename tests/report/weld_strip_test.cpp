#include "report/weld_strip.hpp"

#include "case.hpp"
#include "catch.hpp"
#include "measure/print.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::string strip(const std::string &coupon, const std::vector<std::string> &log) {
    const auto set = set_from(
        head() + "rules: [{id: r, types: porosity, exams: RT, measure: size, at most: 0.1 in, clause: c, "
                 "standing: {house: x}}]\n");
    const JudgedCase c = judged(set, {coupon, log});
    return weld_strip(c.view(), c.judgement.classes[0]);
}

} // namespace

TEST_CASE("the strip shows each find at its place, and which of them reject") {
    const std::string out = strip("weld-length=8in", {"RT gas pore 0.05 at 0", "RT gas pore 0.2 at 4"});
    CHECK_THAT(out, Catch::Contains("    #1                              #2\n"));
    CHECK_THAT(out, Catch::Contains("    =-------------------------------XX-"));
    CHECK_THAT(out, Catch::Contains("X rejects, = does not"));
    CHECK(strip("weld-length=8in", {"RT gas pore 0.05"}).empty());
}

TEST_CASE("the strip of a girth weld shows the hours, and a find over the datum on both ends") {
    const std::string out = strip("form=tube seam=girth diameter=2in", {"RT gas pore l 0.3 s 0.3 at 6.2"});
    CHECK_THAT(
        out, Catch::Contains(
                 "    12:00           3               6               9           12:00  (6.2832 in round)"));
    CHECK_THAT(out, Catch::Contains("    XX"));
    CHECK_THAT(out, Catch::Contains("-XX\n"));
}

TEST_CASE("the difference is that of the printed numbers") {
    // 1 mm is 0.03937 in, 0.9 mm is 0.035433 in.
    const PrintedPair p = print_pair(Exact(1'000'000), Exact(900'000), Dimension::length, Unit::inch);
    CHECK(p.first == "0.0394 in");
    CHECK(p.second == "0.0354 in");
    CHECK(p.difference == "0.004 in");
    const PrintedPair near =
        print_pair(Exact(1'000'001), Exact(1'000'000), Dimension::length, Unit::millimetre);
    CHECK(near.first == "1.000001 mm");
    CHECK(near.difference == "0.000001 mm");
}

TEST_CASE("the place of a window's finding is that of its finds, the window lies on the weld") {
    const auto set = set_from(
        head() +
        "rules: [{id: r, types: porosity, exams: RT, measure: sum of length, window: 2 in, at most: 0.1 "
        "in, clause: c, standing: {house: x}}]\n");
    const auto c = judged(set, {"weld-length=8in", {"RT gas pore 0.1 at 7.5", "RT gas pore 0.1 at 7.8"}});
    CHECK(c.sentences("A") ==
          "#1 and #2 gas pore (RT) from 7.5 in to 7.9 in: sum of length in any 2 in is 0.2 in, limit 0.1 "
          "in: over by 0.1 in, counted from 6 in to 8 in.\n");
}

TEST_CASE("what counts as one is said to, and by which clause") {
    const auto set = set_from(
        head() + "merge: [{id: m, types: any, exams: RT, when: gap under smaller size, clause: '4.2', "
                 "standing: {house: x}}]\nrules: [{id: r, types: any, exams: RT, measure: "
                 "length, at most: 0.25 in, clause: c, standing: {house: x}}]\n");
    const auto c = judged(set, {"weld-length=8in", {"RT slag 0.1 at 1", "RT slag 0.1 at 1.15"}});
    CHECK(c.verdicts() == "A accept, B accept");
    const auto over = judged(set, {"weld-length=8in", {"RT slag 0.1 at 1", "RT slag 0.15 at 1.15"}});
    CHECK_THAT(over.sentences("A"), Catch::Contains("they count as one, gap under smaller size (4.2)"));
}
