// What is known of a part bounds the find that several make together: its shape, its depth, and whether a
// rule speaks of it. What has a place and no length may end anywhere. Found by the second opinion
// (tests/second).
#include "case.hpp"
#include "catch.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// Of ship hulls by level B: a linear one up to 2 mm, a rounded one up to 6 mm (by PT).
JudgedCase by_penetrant(std::vector<std::string> log) {
    return judged("ship-hull-levels", {"joint=groove material=steel", std::move(log)});
}
JudgedCase undercut(std::vector<std::string> log) {
    return judged("ship-hull", {"joint=groove material=steel thickness=20mm", std::move(log)});
}
std::string before(const JudgedCase &c) {
    JudgedCase out = c;
    out.judgement =
        judge(*c.set, c.coupon, c.exams, c.indications, Vocabulary::shipped(), first_with_bounds - 1);
    return out.verdicts();
}

} // namespace

TEST_CASE("pores in a row are linear together, also where nobody told their widths") {
    const std::string all_reject = "B reject, C reject, D reject",
                      all_accept = "B accept, C accept, D accept";
    // ISO 23277: linear is longer than three times its width; each is no wider than long, so 4 mm over 1 mm.
    const auto four = by_penetrant({"PT gas pore s 1 mm at 10 mm", "PT gas pore s 1 mm at 11 mm",
                                    "PT gas pore s 1 mm at 12 mm", "PT gas pore s 1 mm at 13 mm"});
    CHECK(four.verdicts() == all_reject);
    CHECK(before(four) == all_accept);
    // Three times the width is still rounded.
    CHECK(by_penetrant(
              {"PT gas pore s 1 mm at 10 mm", "PT gas pore s 1 mm at 11 mm", "PT gas pore s 1 mm at 12 mm"})
              .verdicts() == all_accept);
    // One narrow part is enough, whatever the width of the other.
    const auto narrow =
        by_penetrant({"PT gas pore l 1.5 mm w 0.5 mm at 10 mm", "PT gas pore s 1.5 mm at 11.5 mm"});
    CHECK(narrow.verdicts() == all_reject);
    CHECK(before(narrow) == all_accept);
}

TEST_CASE("a name does not make a measured round one linear with a neighbour of unknown shape") {
    // 4.57 mm: over the limit if linear, within if rounded, and the width of the second decides.
    const std::string open = "B cannot say, C cannot say, D cannot say";
    const std::string round = "PT undercut l 2.1 mm w 2 mm at 27.5 mm",
                      unknown = "PT spatter l 2.5 mm at 29.6 mm";
    CHECK(by_penetrant({round, unknown}).verdicts() == open);
    CHECK(by_penetrant({unknown, round}).verdicts() == open);
    CHECK(before(by_penetrant({round, unknown})) == "B reject, C reject, D reject");
}

TEST_CASE("a part that is too deep rejects, whatever the depth of its neighbour") {
    // Table 12: an undercut up to 0.8 mm deep, and up to 90 mm long where it is deeper than 0.5 mm.
    const std::string deep = "VT undercut l 0.78 mm d 0.9 mm at 10 mm",
                      untold = "VT undercut l 0.85 mm at 10.78 mm";
    CHECK(undercut({deep}).verdicts() == "hull reject");
    CHECK(undercut({deep, untold}).verdicts() == "hull reject");
    CHECK(undercut({untold, deep}).verdicts() == "hull reject");
    CHECK(before(undercut({deep, untold})) == "hull cannot say");
    CHECK(undercut({"VT undercut l 0.78 mm d 0.8 mm at 10 mm", untold}).verdicts() == "hull cannot say");
    const std::string longer = "VT undercut l 90 mm d 0.6 mm at 10 mm";
    CHECK(undercut({longer}).verdicts() == "hull accept");
    CHECK(undercut({longer, "VT undercut l 0.85 mm at 100 mm"}).verdicts() == "hull reject");
    CHECK(undercut({"VT undercut l 90 mm d 0.5 mm at 10 mm", "VT undercut l 0.85 mm at 100 mm"}).verdicts() ==
          "hull cannot say");
}

TEST_CASE("a lone find is near no other, also on a weld of unknown length") {
    const std::vector<std::string> lone{"RT surface pore 6.000001 mm at 9 mm"};
    const auto untold = judged("ship-hull", {"joint=groove material=steel thickness=49mm", lone});
    CHECK(untold.verdicts() == "hull accept");
    CHECK(before(untold) == "hull cannot say");
}

TEST_CASE("what has a place and no length may reach to its neighbour") {
    // Row 4.1 of ISO 5817 is a gap: two that overlap along the weld are left to a person.
    const auto caps = [](const std::string &first) {
        return judged("iso-5817",
                      {"joint=groove material=steel process=GTAW weld-length=200mm thickness=10mm",
                       {"VT excess weld metal " + first + " h 1 mm w 10 mm smooth at 10 mm",
                        "VT excess weld metal l 20 mm h 1 mm w 10 mm smooth at 30 mm"}});
    };
    CHECK(caps("l 19 mm").verdicts() == "B accept, C accept, D accept");
    CHECK(caps("").verdicts() == "B cannot say, C cannot say, D cannot say");
    CHECK(before(caps("")) == "B accept, C accept, D accept");

    const auto own = [](const std::string &rule, std::vector<std::string> log) {
        return judged(
                   set_from(
                       head() +
                       "rules:\n  - {id: r, types: porosity, exams: RT, clause: c, standing: {house: x}, " +
                       rule + "}\n"),
                   {"weld-length=20in", std::move(log)})
            .verdicts();
    };
    const std::vector<std::string> far{"RT pore at 1", "RT pore at 7.5"},
        near{"RT pore at 1", "RT pore at 1.5"};
    const std::string accept = "A accept, B accept", open = "A cannot say, B cannot say",
                      reject = "A reject, B reject";
    CHECK(own("measure: gap, at least: 1 in", far) == open);
    CHECK(own("measure: gap, at least: 1 in", near) == reject);
    CHECK(own("measure: gap, at least: 1 in", {"RT pore 0.1 at 1", "RT pore 0.1 at 7.5"}) == accept);
    CHECK(own("measure: gap, at least: 1 in", {"RT pore at 1"}) == accept);
    // Two that are too near are so with one of unknown size between them.
    const std::string spaced = "measure: gap, at least: 4 x larger size";
    CHECK(own(spaced, {"RT pore 0.5 at 1", "RT pore 0.5 at 2"}) == reject);
    CHECK(own(spaced, {"RT pore 0.5 at 1", "RT pore at 1.75", "RT pore 0.5 at 2"}) == reject);
    CHECK(own("measure: count, window: 6 in, at most: 1", far) == open);
    CHECK(own("measure: count, window: 6 in, at most: 1", near) == reject);
    CHECK(own("measure: count, window: 6 in, at most: 2", far) == accept);
    CHECK(own("measure: count, linked: gap at most 1 in, at most: 1", far) == open);
    CHECK(own("measure: count, linked: gap at most 1 in, at most: 1", near) == reject);
}
