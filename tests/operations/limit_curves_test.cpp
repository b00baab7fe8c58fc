// Each limit over the thickness, as the judge works it out: steps stand where the table has them.
#include "case.hpp"
#include "catch.hpp"
#include "operations/limit_curves.hpp"
#include "render/text.hpp"
#include "report/limit_curves_document.hpp"

using namespace beadbook;
using namespace beadbook::test;

TEST_CASE("a step of a table stands at its thickness, with the limit of the side that holds it") {
    const auto set = set_from(head() + R"(scope:
  - {id: thin, when: T at most 1/2 in, clause: "1", standing: {house: x}}
tables:
  pore:
    by: T
    rows:
      up to 1/8 in: 1/16 in
      over 1/8 in: 0.2 in
rules:
  - id: pore
    types: porosity
    exams: RT
    measure: size
    at most: {A: table pore, B: table pore}
    clause: "2"
    standing: {house: x}
)");
    const LimitCurves all = limit_curves(set, {});
    REQUIRE(all.rules.size() == 1);
    REQUIRE(all.rules.front().curves.size() == 1);
    const LimitCurve &curve = all.rules.front().curves.front();
    const std::size_t eighth = 7, half = 31;
    REQUIRE(all.thickness[eighth] == nm_per_inch / 8);
    CHECK(curve.under[eighth] == Exact(nm_per_inch / 16));
    CHECK(curve.at[eighth] == Exact(nm_per_inch / 16));
    CHECK(curve.over[eighth] == Exact(nm_per_inch / 5));
    CHECK(curve.at[eighth + 1] == curve.under[eighth + 1]);
    // Where the scope ends nothing is said.
    CHECK(curve.at[half].has_value());
    CHECK_FALSE(curve.over[half].has_value());
    CHECK_FALSE(curve.at[half + 1].has_value());
}

TEST_CASE("a limit that hangs on the weld's length is told as it is written, and no dash") {
    const auto set =
        set_from("set: s\ntitle: t\nedition: e\nunits: in\nclasses: [A, B]\nordered: no\nscope: not "
                 "read\nquantities: {L: weld length}\nrules:\n  - {id: r, types: undercut, exams: "
                 "VT, measure: sum of length, window: whole weld, at most: {A: 1 in, B: 8 % x L}, "
                 "clause: c, standing: {house: x}}\n");
    const LimitCurves all = limit_curves(set, {});
    REQUIRE(all.rules.size() == 1);
    const auto &curves = all.rules.front().curves;
    REQUIRE(curves.size() == 2);
    CHECK(curves[0].at.front().has_value());
    CHECK_FALSE(curves[0].open.front());
    CHECK_FALSE(curves[1].at.front().has_value());
    CHECK(curves[1].open.front());
    CHECK_THAT(text(document_of(all)), says("8 % x L") && !says("  -  "));
}

TEST_CASE("a class that is sought is shown alone, and one that the set has not is refused") {
    const auto set = set_from("set: s\ntitle: t\nedition: e\nunits: in\nclasses: [A, B]\nordered: no\nscope: "
                              "not read\nrules:\n  - {id: r, "
                              "types: undercut, exams: VT, measure: depth, at most: {A: 0.01 in, B: 0.02 "
                              "in}, clause: c, standing: {house: x}}\n"
                              "  - {id: b, types: crack, exams: VT, allowed: {A: does not apply, B: none}, "
                              "clause: c, standing: {house: x}}\n");
    CouponRecord coupon;
    coupon.set("class", "A");
    const LimitCurves all = limit_curves(set, coupon);
    REQUIRE(all.rules.size() == 1);
    REQUIRE(all.rules[0].curves.size() == 1);
    CHECK(all.rules[0].curves[0].classes == std::vector<std::size_t>{0});
    CHECK(all.others.empty());
    CHECK_THAT(text(document_of(all)), says("Class A alone.") && !says("class B"));
    coupon.set("class", "C");
    try {
        limit_curves(set, coupon);
        FAIL("a class that is not there was drawn");
    } catch (const Refusal &e) {
        CHECK_THAT(e.what(), says("s has no class 'C'; it has A and B"));
    }
}

TEST_CASE("a set that covers more than an inch and ends is drawn to its end, one without an end to an inch") {
    const auto drawn_to = [](const std::string &scope) {
        return limit_curves(set_from("set: s\ntitle: t\nedition: e\nunits: in\nclasses: [A]\nordered: no\n"
                                     "quantities: {T: thinner member}\nscope: " +
                                     scope +
                                     "\nrules:\n  - {id: r, types: undercut, exams: VT, measure: depth, at "
                                     "most: 0.1 x T, clause: c, standing: {house: x}}\n"),
                            {})
            .thickness.back();
    };
    const auto up_to = [](const std::string &end) {
        return "[{id: w, when: T from 1/8 in to " + end + ", clause: c, standing: {house: x}}]";
    };
    CHECK(drawn_to("not read") == nm_per_inch);
    CHECK(drawn_to(up_to("1 in")) == nm_per_inch);
    CHECK(drawn_to(up_to("1-1/2 in")) == 2 * nm_per_inch);
    CHECK(drawn_to(up_to("4 in")) == 4 * nm_per_inch);
    CHECK(drawn_to(up_to("40 in")) == nm_per_inch);
}

TEST_CASE("a picture of a limit on a group in line says so, and of how many") {
    const auto set =
        set_from(head() + "scope: not read\nrules:\n  - {id: r, title: Row, types: porosity, "
                          "exams: RT, measure: sum of size, window: 12 x T, linked: gap at most "
                          "1/4 in, least group: 4, at most: T, clause: c, standing: {house: x}}\n");
    const Document doc = document_of(limit_curves(set, {}));
    const std::string group = " of a line (gap at most 1/4 in) of 4 or more";
    CHECK_THAT(text(doc), says("sum of size in any 12 x T" + group));
    std::size_t pictures = 0;
    for (const auto &block : doc.blocks)
        if (const auto *figure = std::get_if<Figure>(&block)) {
            CHECK_THAT(figure->picture.title, says("Row" + group + ", limit over thickness"));
            ++pictures;
        }
    CHECK(pictures == 1);
}
