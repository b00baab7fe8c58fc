#include "catch.hpp"
#include "qualify/welds.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

const std::string rules_head = R"(rules: r
title: t
edition: e
units: in
quantities: {T: thinner member}
words: {position: {test: [1G, 2G], work: [F, H]}}
)";
const std::string rules_tail = R"(validity: [{id: v, clause: c, standing: {house: x}}]
)";

std::string with_range(const std::string &range, const std::string &variables = "[thickness]") {
    return rules_head + "variables: " + variables + "\nranges:\n  - {id: a, " + range +
           ", clause: c, standing: {house: x}}\n" + rules_tail;
}

} // namespace

TEST_CASE("the shipped rules load without an issue, and each range has a source") {
    CHECK(shipped_range_rule_names() == std::vector<std::string>{"asme-ix", "aws-d1.1", "aws-d17.1",
                                                                 "iso-9606-1", "mil-std-1595a", "ship-hull"});
    for (const auto &name : shipped_range_rule_names()) {
        const auto rules = shipped_range_rules(name);
        INFO(name);
        CHECK(rules->name == name);
        CHECK(load_range_rules(rules->text).issues.empty());
        CHECK_FALSE(rules->gaps.empty());
        for (const auto &rule : rules->rules) {
            CHECK_FALSE(rule.clause.empty());
            CHECK_FALSE(rule.standing.source.empty());
        }
    }
}

TEST_CASE("mistakes in a rules file are told with line, column, what was found and what was expected") {
    const std::vector<std::pair<std::string, std::string>> rows{
        {with_range("of: thicknes, allows: any"), "'thicknes' limits no qualification"},
        {with_range("of: thicknes, allows: any"), "did you mean 'thickness'?"},
        {with_range("of: thickness, allows: from 0.67 x T to 4 x D"), "f.yaml:9:"},
        {with_range("of: thickness, allows: from 90 deg"), "compares a length with an angle"},
        {with_range("of: thickness, allows: any, by test: {a: b}"), "expected either 'allows' or 'by test'"},
        {with_range("of: position, by test: {3G: F}", "[position]"),
         "position: '3G' is not known to r for a test"},
        {with_range("of: position, by test: {2G: [F, Q]}", "[position]"),
         "'Q' is not known to r for work; expected F or H"},
        {with_range("of: position, test: {thickness: over T}, allows: F", "[position]"),
         "must be a plain number"},
        {with_range("of: position, allows: F, tests: {}", "[position]"), "unknown key 'tests'"},
        {with_range("of: position, allows: F", "[position, thickness]"), "no range speaks of 'thickness'"},
        {with_range("of: position, allows: F"), "'position' is not among the variables"},
        {rules_head + "variables: [thickness]\nranges: [{id: a, of: thickness, allows: any, clause: c, "
                      "standing: {house: x}}]\n",
         "there must be at least one way"},
        {with_range("of: thickness, allows: any") +
             "retest: {immediate: {coupons: 0, clause: c, standing: {house: x}}}\n",
         "found '0'; expected a number from 1 to 9"},
        {rules_head + "variables: [thickness]\nranges: [{id: a, of: thickness, allows: any, clause: c, "
                      "standing: {house: x}}]\n"
                      "validity: [{id: v, use every: six months, clause: c, standing: {house: x}}]\n",
         "'six months' is no period"},
        {with_range("of: thickness, allows: any") + "gaps: [{of: thickness, what: x}]\n",
         "'thickness' is among the variables, so it was read"},
        {with_range("of: thickness, allows: any") + "gaps: [{of: diameter}]\n", "what"},
        {with_range("of: thickness, allows: any") + "gaps: [{of: diametr, what: x}]\n",
         "did you mean 'diameter'?"},
        {"rules: [", "f.yaml:1:"},
        {"", "the file is empty"},
    };
    for (const auto &[text, expected] : rows) CHECK_THAT(errors_of(text), says(expected));
    CHECK(errors_of(with_range("of: thickness, allows: from 0.67 x T to 4 x T")).empty());
}

TEST_CASE("missing data never qualify, and the answer says what is missing") {
    CHECK(qualifies("mil-std-1595a", "joint groove", "joint groove, thickness 0.1 in", "thickness") ==
          "cannot say");
    CHECK(qualifies("mil-std-1595a", "thickness 0.1 in", "joint groove", "thickness") == "cannot say");
    CHECK(qualifies("mil-std-1595a", "", "", "position") == "cannot say");
    // Whether the diameter limits it at all is open, but this test would allow any.
    CHECK(qualifies("asme-ix", "joint groove, form tube, diameter 2 in", "joint groove", "diameter") ==
          "cannot say");
    CHECK(qualifies("asme-ix", "joint groove, form tube, diameter 2 in", "joint groove, form plate",
                    "diameter") == "not asked");
    const auto rules = shipped_range_rules("asme-ix");
    const auto range = range_of(*rules, weld("joint groove, form tube, process GTAW"));
    const Cover cover = covers(range, weld("joint groove, form tube, process GTAW, diameter 2 in"));
    CHECK(cover.covered == Truth::unknown);
    bool told = false;
    for (const auto &one : cover.variables)
        if (one.variable->of == Trait::diameter) {
            told = true;
            CHECK(one.covered == Truth::unknown);
            CHECK(one.lacks == std::vector<Lack>{{Trait::diameter, Lack::Of::test}});
        }
    CHECK(told);
}

TEST_CASE("an inch and its millimetres qualify alike") {
    for (const auto &[inch, mm] : std::vector<std::pair<std::string, std::string>>{
             {"0.050 in", "1.27 mm"}, {"1/2 in", "12.7 mm"}, {"2-7/8 in", "73.025 mm"}}) {
        CHECK(weld("thickness " + inch) == weld("thickness " + mm));
        CHECK(qualifies("mil-std-1595a", "thickness " + inch, "thickness " + mm, "thickness") == "yes");
    }
}
