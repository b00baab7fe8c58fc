// Each limit from both sides, made from the rules and tried by the judge.
#include "case.hpp"
#include "catch.hpp"
#include "criteria/shipped.hpp"
#include "operations/boundaries.hpp"
#include "render/text.hpp"
#include "report/boundaries_document.hpp"

#include <algorithm>
#include <set>

using namespace beadbook;
using namespace beadbook::test;

namespace {

Boundaries of_rule(const std::string &rest, const std::string &more = "") {
    const std::string scope = more.find("scope:") == std::string::npos ? "scope: not read\n" : "";
    return boundaries_of(
        set_from("set: s\ntitle: t\nedition: e\nunits: in\nclasses: [A]\n" + scope + more +
                 "quantities: {T: thinner member, D: outside diameter}\nrules:\n  - {id: r, " + rest +
                 ", clause: c, standing: {house: x}}\n"));
}

const std::string pores = "types: porosity, exams: RT, ";

/// The values of a case with what the rule says of them: "1/1000 in" within as 1w, outside as 2o.
std::string tries_of(const BoundaryCase &one) {
    std::string out;
    for (const auto &tried : one.tries) {
        const Exact thousandths = tried.value / Exact(nm_per_inch / 1000);
        out += (out.empty() ? "" : " ") + std::to_string(static_cast<long>(thousandths.num())) +
               (tried.rejects ? "o" : "w");
    }
    return out;
}

} // namespace

TEST_CASE("a limit is tried just under, at and just over it") {
    const Boundaries most = of_rule(pores + "measure: size, at most: 0.060 in");
    REQUIRE(most.cases.size() == 1);
    CHECK(tries_of(most.cases[0]) == "59w 60w 61o");
    CHECK(most.disagreeing() == 0);
    const Boundaries under = of_rule(pores + "measure: size, under: 0.060 in");
    CHECK(tries_of(under.cases.at(0)) == "59w 60o 61o");
    CHECK(under.disagreeing() == 0);
    const Boundaries least = of_rule("types: fillet size, exams: VT, measure: size, at least: 0.060 in");
    CHECK(tries_of(least.cases.at(0)) == "59o 60w 61w");
    CHECK(least.disagreeing() == 0);
    const Boundaries gap = of_rule(pores + "measure: gap, at least: 1/8 in");
    CHECK(tries_of(gap.cases.at(0)) == "124o 125w 126w");
    CHECK(gap.disagreeing() == 0);
    const Boundaries sum = of_rule(pores + "measure: sum of size, window: 3 in, at most: 0.120 in");
    CHECK(tries_of(sum.cases.at(0)) == "119w 120w 121o");
    CHECK(sum.disagreeing() == 0);
    const Boundaries count = of_rule(pores + "measure: count, window: 6 in, at most: 3");
    REQUIRE(count.cases.size() == 1);
    CHECK(count.cases[0].tries.size() == 3);
    CHECK(count.disagreeing() == 0);
}

TEST_CASE("coupons stand on both sides of each change of a formula, and within the conditions") {
    const Boundaries all =
        of_rule(pores + "measure: size, at most: lesser of T/4 and 0.030 in, when: T up to 1/2 in");
    CHECK(all.disagreeing() == 0);
    bool share = false, cap = false;
    for (const auto &one : all.cases) {
        const std::int64_t thickness = one.coupon.values[Quantity::thinner];
        CHECK(thickness <= nm_per_inch / 2);
        share = share || one.limit < Exact(30 * (nm_per_inch / 1000));
        cap = cap || one.limit == Exact(30 * (nm_per_inch / 1000));
    }
    CHECK(share);
    CHECK(cap);
}

TEST_CASE("a limit in proportion is tried on welds as long as its window and shorter") {
    const Boundaries all =
        of_rule(pores + "measure: count, window: 6 in, at most: 12, short weld: in proportion");
    CHECK(all.disagreeing() == 0);
    CHECK(all.none.empty());
    std::set<std::pair<std::int64_t, Exact>> limits; // by the length of the weld
    for (const auto &one : all.cases) {
        limits.emplace(one.coupon.values[Quantity::weld_length], one.limit);
        CHECK(one.tries.size() == 3);
    }
    CHECK(limits.contains({6 * nm_per_inch, Exact(12)}));
    CHECK(limits.contains({3 * nm_per_inch, Exact(6)}));
    CHECK(limits.size() == 4);
    const Boundaries sum = of_rule(pores + "measure: sum of length, window: 12 x T, at most: T/2, short "
                                           "weld: in proportion");
    CHECK(sum.disagreeing() == 0);
    CHECK(std::any_of(sum.cases.begin(), sum.cases.end(), [](const BoundaryCase &one) {
        return one.limit < Exact(one.coupon.values[Quantity::thinner]) / Exact(2);
    }));
}

TEST_CASE("what does not count, and what no coupon has, is told and not made up") {
    const Boundaries hidden = of_rule(pores + "measure: size, at most: 1/32 in",
                                      "relevance: [{id: small, types: porosity, exams: RT, ignore: size at "
                                      "most 1/16 in, clause: c, standing: {house: x}}]\n");
    CHECK(hidden.cases.empty());
    REQUIRE(hidden.none.size() == 1);
    CHECK(hidden.none[0].why == NoBoundary::Why::no_find);
    const Boundaries nowhere =
        of_rule(pores + "measure: size, at most: 1/32 in, when: [T over 1 in, T under 1/2 in]");
    REQUIRE(nowhere.none.size() == 1);
    CHECK(nowhere.none[0].why == NoBoundary::Why::no_coupon);
}

TEST_CASE("coupons on which what is over a limit does not count are named") {
    const Boundaries of = of_rule(
        pores + "measure: size, at most: lesser of 0.2 x T and 1/8 in",
        "relevance:\n  - {id: small, types: porosity, exams: RT, ignore: size at most 1/16 in, clause: c, "
        "standing: {house: x}}\nscope:\n  - {id: all, when: T from 1/8 in to 2 in, clause: c, standing: "
        "{house: x}}\n");
    CHECK(!of.cases.empty());
    REQUIRE(of.none.size() == 1);
    CHECK(of.none[0].why == NoBoundary::Why::no_find);
    REQUIRE(of.none[0].named);
    CHECK(of.none[0].named->quantity == Quantity::thinner);
    CHECK(of.none[0].named->value < nm_per_inch / 16 * 5); // there a fifth is less than what counts
}

TEST_CASE("each value and word that a rule names is met once") {
    const Boundaries all = of_rule(pores + "measure: size, at most: T/4, when: [joint is groove or plug, T "
                                           "over 1/8 in to 1/2 in, D from 2 in to 3 in]");
    CHECK(all.disagreeing() == 0);
    CHECK(all.none.empty());
    std::set<std::int64_t> thicknesses, diameters;
    std::set<int> joints;
    for (const auto &one : all.cases) {
        thicknesses.insert(one.coupon.values[Quantity::thinner]);
        diameters.insert(one.coupon.values[Quantity::outside_diameter]);
        joints.insert(one.coupon.facts[0]);
    }
    CHECK(*thicknesses.begin() == nm_per_inch / 8 + nm_per_inch / 1000);
    CHECK(*thicknesses.rbegin() == nm_per_inch / 2);
    CHECK(*diameters.begin() == 2 * nm_per_inch);
    CHECK(*diameters.rbegin() == 3 * nm_per_inch);
    CHECK(joints.size() == 2);
}

TEST_CASE("a window is tried a step shorter, as long and a step longer, by finds over the limit together") {
    const auto window_of = [](const std::string &measure) {
        const Boundaries all = of_rule(pores + measure);
        CHECK(all.disagreeing() == 0);
        REQUIRE(all.windows.size() == 1);
        CHECK(all.windows[0].limit == Exact(3 * nm_per_inch));
        return tries_of(all.windows[0]);
    };
    // A length is cut by the window's end; what counts in full, and only meets it, lies beyond.
    CHECK(window_of("measure: sum of length, window: 3 in, at most: 0.5 in") == "2999o 3000o 3001w");
    CHECK(window_of("measure: sum of size, window: 3 in, under: 0.5 in") == "2999o 3000w 3001w");
    CHECK(window_of("measure: count, window: 3 in, at most: 3") == "2999o 3000w 3001w");
    const Boundaries by_wall = of_rule(pores + "measure: count, window: 12 x T, at most: 2");
    CHECK(by_wall.windows.size() > 3);
    CHECK(by_wall.disagreeing() == 0);
    CHECK(of_rule(pores + "measure: sum of size, window: whole weld, at most: 0.5 in").windows.empty());
}

TEST_CASE("a word that no coupon of the scope has is named with the reason") {
    const Boundaries all =
        of_rule(pores + "measure: size, at most: 1/16 in, when: joint is groove or plug",
                "scope: [{id: g, when: joint is groove, clause: c, standing: {house: x}}]\n");
    CHECK(all.cases.size() == 1);
    REQUIRE(all.none.size() == 1);
    CHECK(all.none[0].why == NoBoundary::Why::no_coupon);
    REQUIRE(all.none[0].named);
    CHECK(info(Fact::joint).words[all.none[0].named->word - 1] == "plug");
}

TEST_CASE("the judge agrees with every limit of every shipped set on both sides") {
    std::size_t limits = 0, none = 0;
    for (const auto &name : shipped_sets()) {
        const Boundaries all = boundaries_of(shipped_criteria(name));
        INFO(name);
        CHECK(all.disagreeing() == 0);
        for (const auto &one : all.cases)
            if (!one.agrees()) {
                INFO(all.set->rules[one.rule].id << " " << all.set->classes[one.class_index].id << " "
                                                 << tries_of(one));
                CHECK(one.agrees());
            }
        limits += all.cases.size();
        none += all.none.size();
    }
    CHECK(limits > 1000);
    CHECK(none * 5 < limits);
}

TEST_CASE("the heading of a table says that its limit is one of a group in line, and of how many") {
    const Boundaries row = of_rule(pores + "measure: sum of size, linked: gap at most 1/4 in, least group: "
                                           "4, at most: 0.5 in");
    CHECK_THAT(text(document_of(row)),
               says("sum of size of a line (gap at most 1/4 in) of 4 or more, at most"));
}
