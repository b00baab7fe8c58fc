// How an end of a range that a formula works out is compared (ASTM E29: absolute, or rounded, halves to the
// even figure), both sides to the nanometre.
#include "catch.hpp"
#include "qualify/welds.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::string rules_text(const std::string &ends, const std::string &allows = "from 0.67 x T to 4 x T") {
    return "rules: r\ntitle: t\nedition: e\nunits: in\nquantities: {T: thinner member, t: weld thickness}\n"
           "variables: [thickness]\nranges: [{id: a, of: thickness, allows: " +
           allows + ", clause: c, standing: {house: x}}]\n" + ends +
           "validity: [{id: v, clause: c, standing: {house: x}}]\n";
}

std::string compared(const std::string &how) {
    return "ends: {compared: " + how + ", clause: c, standing: {house: x}}\n";
}

/// Whether a test of the one thickness covers work of the other.
bool covered(const std::string &text, const std::string &test, const std::string &work) {
    const auto loaded = load_range_rules(text);
    REQUIRE(loaded.rules);
    return covers(*loaded.rules, weld("thickness " + test), weld("thickness " + work)).covered == Truth::yes;
}

/// The ends of the test's thickness as they are compared, in nanometres.
std::vector<Exact> ends_of(const std::string &text, const std::string &test) {
    const auto loaded = load_range_rules(text);
    REQUIRE(loaded.rules);
    const auto range = range_of(*loaded.rules, weld(test));
    std::vector<Exact> out;
    for (const auto &[compare, edge] : range.at(0).parts.at(0).edges) out.push_back(edge);
    return out;
}

} // namespace

TEST_CASE("AWS D17.1: a 0.045 in wall qualifies from 0.030 in, not a nanometre less") {
    // 0.67 T = 0.03015 in; the rule was read, that walls are printed to 0.001 in is common practice.
    const std::string test = "joint groove, form sheet, thickness 0.045 in";
    const auto asked = [&](const std::string &rules, const std::string &work) {
        return qualifies(rules, test, "joint groove, form sheet, thickness " + work, "thickness");
    };
    CHECK(asked("aws-d17.1", "0.030 in") == "yes"); // 0.762 mm
    CHECK(asked("aws-d17.1", "0.762 mm") == "yes");
    CHECK(asked("aws-d17.1", "0.761999 mm") == "no");
    CHECK(asked("aws-d17.1", "4.572 mm") == "yes"); // 4 T = 0.180 in
    CHECK(asked("aws-d17.1", "4.572001 mm") == "no");
    // No page says how MIL-STD-1595A compares: as worked out.
    CHECK(asked("mil-std-1595a", "0.030 in") == "no");
    CHECK(asked("mil-std-1595a", "0.76581 mm") == "yes");
    CHECK(asked("mil-std-1595a", "0.765809 mm") == "no");
}

TEST_CASE("what is worked out is never refused where the rounded end takes in less") {
    // 0.67 x 0.050 in = 0.0335 in, which rounds to 0.034 in; 4 x 0.0451 in = 0.1804 in, which rounds to
    // 0.180.
    const std::string wider = rules_text(compared("absolute or rounded to 0.001 in")),
                      rounded = rules_text(compared("rounded to 0.001 in"));
    CHECK(covered(wider, "0.050 in", "0.0335 in"));
    CHECK_FALSE(covered(wider, "0.050 in", "0.850899 mm"));
    CHECK_FALSE(covered(rounded, "0.050 in", "0.0335 in"));
    CHECK(covered(rounded, "0.050 in", "0.034 in"));
    CHECK_FALSE(covered(rounded, "0.050 in", "0.863599 mm"));
    CHECK(covered(wider, "0.0451 in", "0.1804 in"));
    CHECK_FALSE(covered(wider, "0.0451 in", "4.582161 mm"));
    CHECK(covered(rounded, "0.0451 in", "0.180 in"));
    CHECK_FALSE(covered(rounded, "0.0451 in", "4.572001 mm"));
}

TEST_CASE("halves of the place go to the even figure") {
    const std::string half = rules_text(compared("rounded to 0.001 in"), "to 0.5 x T");
    // 0.0305 and 0.0315 in.
    CHECK(ends_of(half, "thickness 0.061 in") == std::vector<Exact>{762'000});
    CHECK(ends_of(half, "thickness 0.063 in") == std::vector<Exact>{812'800});
    CHECK(covered(half, "0.061 in", "0.030 in"));
    CHECK_FALSE(covered(half, "0.061 in", "0.762001 mm"));
    CHECK(covered(half, "0.063 in", "0.032 in"));
    CHECK_FALSE(covered(half, "0.063 in", "0.812801 mm"));
    // A nanometre from the half decides it: 0.0305 in is 774 700 nm.
    CHECK(ends_of(half, "thickness 1.549398 mm") == std::vector<Exact>{762'000});
    CHECK(ends_of(half, "thickness 1.549402 mm") == std::vector<Exact>{787'400});
    CHECK(ends_of(rules_text(compared("rounded to 0.1 mm"), "to 0.5 x T"), "thickness 60.3 mm") ==
          std::vector<Exact>{30'200'000});
}

TEST_CASE("printed ends and the test's own sizes are not rounded, and without the key nothing is") {
    const std::string own = rules_text(compared("rounded to 0.001 in"), "from 5/16 in to T");
    CHECK(ends_of(own, "thickness 0.0625 in") == std::vector<Exact>{7'937'500, 1'587'500});
    CHECK(ends_of(rules_text("", "from 0.67 x T to 2 x t"), "thickness 0.045 in, weld thickness 0.0312 in") ==
          std::vector<Exact>{765'810, 1'584'960});
    CHECK(ends_of(rules_text(compared("absolute")), "thickness 0.045 in").front() == Exact(765'810));
}

TEST_CASE("a part keeps what was computed beside what is compared") {
    const auto rules = shipped_range_rules("aws-d17.1");
    for (const auto &one : range_of(*rules, weld("thickness 0.045 in"))) {
        if (one.variable->of != Trait::thickness) continue;
        const RangePart &part = one.parts.at(0);
        CHECK(part.rounded());
        CHECK(part.edges.at(0).second == Exact(762'000));
        CHECK(part.computed == std::vector<Exact>{765'810, 4'572'000});
        CHECK(print(part, Unit::inch) == "from 0.03 in (computed 0.03015 in) to 0.18 in");
    }
    for (const auto &one : range_of(*rules, weld("thickness 0.050 in")))
        for (const auto &part : one.parts) CHECK_FALSE(part.rounded());
}

TEST_CASE("mistakes in `ends` are told where they stand") {
    CHECK(errors_of(rules_text(compared("absolute"))).empty());
    CHECK_THAT(errors_of(rules_text(compared("roughly"))),
               says("found 'roughly'; expected absolute, rounded to a length"));
    CHECK_THAT(errors_of(rules_text(compared("rounded to 0.001"))), says("f.yaml:8:"));
    CHECK_THAT(errors_of(rules_text(compared("rounded to 0 in"))), says("the place must be over 0"));
    CHECK_THAT(errors_of(rules_text(compared("rounded to 5 deg"))), says("ends.compared"));
    CHECK_THAT(errors_of(rules_text("ends: {compared: absolute, standing: {house: x}}\n")), says("clause"));
    CHECK_THAT(errors_of(rules_text("ends: {compared: absolute, clause: c}\n")), says("standing"));
}

TEST_CASE("every shipped set says how its ends are compared, and on whose word") {
    for (const auto &name : shipped_range_rule_names()) {
        INFO(name);
        const auto rules = shipped_range_rules(name);
        REQUIRE(rules->ends.from);
        CHECK_FALSE(rules->ends.from->standing.source.empty());
        CHECK((rules->ends.kind == EndComparison::Kind::absolute) == (name != "aws-d17.1"));
    }
}
