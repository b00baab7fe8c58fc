#include "catch.hpp"
#include "qualify/plan.hpp"
#include "qualify/set_cover.hpp"
#include "qualify/welds.hpp"
#include "report/plan_report.hpp"

#include "criteria/load.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

Work work_from(const std::string &text) {
    const LoadedWork loaded = load_work(text, "", shipped_range_rules);
    INFO((loaded.issues.empty() ? "" : loaded.issues.front().text));
    REQUIRE(loaded.work);
    return *loaded.work;
}

std::string errors_of(const std::string &text) {
    std::string out;
    for (const auto &issue : load_work(text, "", shipped_range_rules).issues)
        out += print(issue, "w.yaml", text);
    return out;
}

const std::string head = "rules: mil-std-1595a\nunits: in\nwork:\n";

std::string job(const std::string &id, const std::string &more) {
    return "  - {id: " + id + ", joint: groove, form: sheet, process: GTAW, metal group: I, " + more + "}\n";
}

} // namespace

TEST_CASE("one coupon covers what lies within 0.67 T to 4 T, two what does not") {
    CHECK(plan_tests(work_from(head + job("a", "position: F, thickness: 0.032 to 0.128"))).coupons.size() ==
          1);
    const Plan two = plan_tests(work_from(head + job("a", "position: F, thickness: 0.032 to 0.5")));
    CHECK(two.coupons.size() == 2);
    CHECK(two.minimal);
    CHECK(two.uncovered.empty());
}

TEST_CASE("several coupons together cover the positions that one cannot") {
    // A flat sheet test in one position gives that position and flat: three for all four, by these rules.
    const Plan plan = plan_tests(work_from(head + job("a", "position: [F, H, V, O], thickness: 0.063")));
    CHECK(plan.coupons.size() == 3);
    for (const auto &coupon : plan.coupons) CHECK(coupon.test.word(Trait::position) != "1G");
}

TEST_CASE("chosen coupons are as plain as they can be") {
    const Plan plan = plan_tests(
        work_from("rules: asme-ix\nunits: in\nwork:\n  - {id: a, joint: groove, form: tube, process: GTAW, "
                  "metal group: P1, filler group: F6, backing: without, diameter: 2 to 6, weld "
                  "thickness: 0.2, position: H}\n"));
    REQUIRE(plan.coupons.size() == 1);
    CHECK(plan.coupons[0].test.word(Trait::position) == "2G"); // 6G would do as well
    CHECK_FALSE(plan.coupons[0].test.size(Trait::thickness));  // does not matter
    CHECK_FALSE(plan.coupons[0].test.size(Trait::layers));
}

TEST_CASE("the stock limits what is proposed, and what it cannot do is said with the reason") {
    const std::string text = "rules: mil-std-1595a\nunits: in\nstock: {thickness: [0.063]}\nwork:\n" +
                             job("thin", "position: F, thickness: 0.05") +
                             job("thick", "position: F, thickness: 0.3");
    const Work work = work_from(text);
    const Plan plan = plan_tests(work);
    REQUIRE(plan.coupons.size() == 1);
    CHECK(*plan.coupons[0].test.size(Trait::thickness) == Exact(1'600'200));
    REQUIRE(plan.uncovered.size() == 1);
    CHECK(work.jobs[plan.uncovered[0].job].id == "thick");
    CHECK_THAT(explain_plan(work, plan, examinations_for(work, plan, nullptr), Paint(false)),
               says("thickness 0.3 in: this test allows from 0.04221 in to 0.252 in, 0.048 in over"));
}

TEST_CASE("work that lacks a datum is not covered, and the plan asks for it") {
    const Work work = work_from(head + job("a", "thickness: 0.063"));
    const Plan plan = plan_tests(work);
    CHECK(plan.coupons.empty());
    REQUIRE(plan.uncovered.size() == 1);
    CHECK_THAT(explain_plan(work, plan, {}, Paint(false)),
               says("position: cannot say without the work's position"));
}

TEST_CASE("what is held is taken off; the rest is planned") {
    const Work work =
        work_from(head + job("a", "position: F, thickness: 0.05") + job("b", "position: V, thickness: 0.05"));
    const auto held = range_of(
        *work.rules,
        weld("joint groove, form sheet, process GTAW, metal group I, position 1G, thickness 0.05 in"));
    const Plan plan = plan_tests(work, {held});
    CHECK(plan.held_jobs == std::vector<std::size_t>{0});
    REQUIRE(plan.coupons.size() == 1);
    CHECK(plan.coupons[0].test.word(Trait::position) == "3G");
    REQUIRE(plan.missed.size() == 1);
    CHECK(plan.missed[0].fails.front().variable->of == Trait::position);
    // A job that is held in part: only the rest is planned.
    const Work wide = work_from(head + job("a", "position: F, thickness: 0.05 to 0.5"));
    CHECK(plan_tests(wide, {held}).coupons.size() == 1);
    CHECK(plan_tests(wide).coupons.size() == 2);
}

TEST_CASE("examinations come with their reason: magnetic or not, groove or fillet, by class") {
    const auto set = load_criteria(R"(set: s
title: t
edition: e
units: in
classes: [A, B]
required exams:
  - {id: v, one of: VT, clause: c1, standing: {house: x}}
  - {id: m, one of: [MT, PT], clause: c2, standing: {house: x}}
  - {id: r, one of: RT, classes: A, when: joint is groove, clause: c3, standing: {house: x}}
rules:
  - {id: r, types: porosity, exams: RT, allowed: none, clause: c, standing: {house: x}}
)")
                         .set;
    REQUIRE(set);
    const auto exams = [&](const std::string &jobs) {
        const Work work = work_from(head + jobs);
        const Plan plan = plan_tests(work);
        return explain_plan(work, plan, examinations_for(work, plan, set.get()), Paint(false));
    };
    const std::string groove = exams(job("a", "position: F, thickness: 0.063, class: A, magnetic: no"));
    CHECK_THAT(groove, says("PT: c2"));
    CHECK(groove.find("MT or PT") == std::string::npos);
    CHECK_THAT(groove, says("RT: c3, house; because joint is groove"));
    CHECK(exams(job("a", "position: F, thickness: 0.063, class: B, magnetic: yes")).find("RT:") ==
          std::string::npos);
    // The strictest class of the jobs decides.
    CHECK_THAT(exams(job("a", "position: F, thickness: 0.063, class: B, magnetic: yes") +
                     job("b", "position: F, thickness: 0.07, class: A, magnetic: yes")),
               says("RT: c3"));
    const std::string fillet =
        exams("  - {id: f, joint: fillet, form: sheet, process: GTAW, metal group: I, position: F, "
              "thickness: 0.063, class: A, magnetic: yes}\n");
    CHECK_THAT(fillet, says("MT or PT: c2"));
    CHECK_THAT(fillet, says("no RT of a fillet: a fillet's thickness varies across the image (common practice)"));
    CHECK(fillet.find("RT: c3") == std::string::npos);
}

TEST_CASE("mistakes in a work file are told with their place") {
    const std::vector<std::pair<std::string, std::string>> rows{
        {head + job("a", "position: Q"), "w.yaml:4:"},
        {head + job("a", "position: Q"), "'Q' is not known to mil-std-1595a for work; expected F, H, V or O"},
        {head + job("a", "thickness: 0.2 to 0.1"), "ends below where it begins"},
        {head + job("a", "thickness: thick"), "'thick' does not begin with a number"},
        {head + job("a", "thicknes: 0.1"), "unknown key 'thicknes'"},
        {head + job("a", "magnetic: perhaps"), "expected yes or no"},
        {head + job("a", "position: F") + job("a", "position: F"), "a weld above has the same id"},
        {"rules: mil-std-1595a\nunits: in\nwork: []\n", "there is no weld"},
        {"rules: mil-std-1595a\nunits: feet\nwork: []\n", "expected in or mm"},
        {"units: in\nwork: []\n", "'rules' is missing"},
        {"rules: mil-std-1595a\nunits: in\nstock: {position: [1G]}\nwork: []\n", "unknown key 'position'"},
    };
    for (const auto &[text, expected] : rows) CHECK_THAT(errors_of(text), says(expected));
}

TEST_CASE("the smallest cover is smaller than the greedy one") {
    // Greedy takes the set of four first and then needs two more.
    const auto bits = [](const std::string &s) { return Bits(s); };
    const SetCover cover = smallest_cover({bits("011110"), bits("111000"), bits("000111")});
    CHECK(cover.chosen == std::vector<std::size_t>{1, 2});
    CHECK(cover.proven);
    CHECK(smallest_cover({}).chosen.empty());
    CHECK(smallest_cover({bits("000")}).chosen.empty());
    CHECK(smallest_cover({bits("101"), bits("101")}).chosen == std::vector<std::size_t>{0});
}
