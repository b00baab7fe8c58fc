#include "catch.hpp"
#include "report/range_document.hpp"

#include "operations/described.hpp"
#include "operations/desk.hpp"
#include "qualify/welds.hpp"
#include "report/range_words.hpp"
#include "report/wide.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// Why a test does not cover a weld, by shipped rules, a line a variable.
std::string shortfalls(const std::string &rules, const std::string &test, const std::string &work) {
    const auto set = shipped_range_rules(rules);
    std::string out;
    for (const auto &range : range_of(*set, weld(test)))
        if (const auto cover = cover_of(range, weld(work)); cover && cover->covered != Truth::yes)
            out += shortfall_words(*cover, range, weld(work), Unit::inch) + "\n";
    return out;
}

} // namespace

TEST_CASE("a refusal says what the test allows, what the work has, and by how much") {
    const std::string all =
        shortfalls("mil-std-1595a", "joint groove, form sheet, thickness 0.050 in, position 2G",
                   "joint groove, form tube, thickness 0.25 in, position V");
    CHECK_THAT(all, says("thickness 0.25 in: this test allows from 0.0335 in to 0.2 in, 0.05 in over [limits "
                         "of a qualification"));
    CHECK_THAT(all, says("form tube: this test allows sheet and plate"));
    CHECK_THAT(all, says("position V: this test allows F and H [positions, common practice]"));
}

TEST_CASE("what is missing is told of the side that lacks it") {
    CHECK_THAT(shortfalls("asme-ix", "joint groove, form tube, process GTAW",
                          "joint groove, form tube, process GTAW, diameter 2 in"),
               says("diameter: cannot say without the test's diameter"));
    CHECK_THAT(shortfalls("mil-std-1595a", "joint groove, form sheet, thickness 0.050 in, position 2G",
                          "joint groove, form sheet, thickness 0.050 in"),
               says("position: cannot say without the work's position"));
}

TEST_CASE("the ends of a range are printed exactly, each with its rule") {
    Desk desk;
    const auto result =
        range_of_coupon(desk.catalogue, "mil-std-1595a", described_coupon({{"thickness", "0.045 in"}}));
    const std::string out = wide(document_of(result));
    CHECK_THAT(out, says("Test: thickness 0.045 in\nqualifies by "));
    CHECK_THAT(out, says("- thickness:\n    - from 0.03015 in to 0.18 in\n      [limits of a qualification"));
    CHECK_THAT(out, says("Not in these rules, so never qualified by them:\n  - "));
    CHECK_THAT(out, says("An aid, not the code"));
}

TEST_CASE("a part that hangs on what the test does not say asks for it") {
    Desk desk;
    const std::string out = wide(document_of(
        range_of_coupon(desk.catalogue, "mil-std-1595a", described_coupon({{"joint", "groove"}}))));
    CHECK_THAT(out, says("cannot say without the test's thickness"));
}
