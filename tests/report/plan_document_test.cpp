#include "catch.hpp"
#include "report/plan_document.hpp"

#include "operations/desk.hpp"
#include "qualify/welds.hpp"
#include "report/wide.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

const std::string plan_head = "rules: mil-std-1595a\nunits: in\n";

std::string job(const std::string &id, const std::string &more, const std::string &joint = "groove") {
    return "  - {id: " + id + ", joint: " + joint + ", form: sheet, process: GTAW, metal group: I, " + more +
           "}\n";
}

PlanResult planned(Desk &desk, const std::string &work, const std::string &criteria = "",
                   const std::vector<HeldTest> &held = {}) {
    return plan_work(desk.catalogue, {{"typed work", work}, "", criteria}, held).value;
}

} // namespace

TEST_CASE("what no coupon covers is told with the nearest one and by how much it fails") {
    Desk desk;
    const std::string out =
        wide(document_of(planned(desk, plan_head + "stock: {thickness: [0.063]}\nwork:\n" +
                                           job("thin", "position: F, thickness: 0.05") +
                                           job("thick", "position: F, thickness: 0.3"))));
    CHECK_THAT(out, says("Not covered by any coupon:\n  - thick: groove, sheet, GTAW, F, metal group I, "
                         "thickness 0.3 in"));
    CHECK_THAT(out, says("nearest coupon: "));
    CHECK_THAT(out, says("thickness 0.3 in: this test allows from 0.04221 in to 0.252 in, 0.048 in over"));
    CHECK_THAT(wide(document_of(planned(desk, plan_head + "work:\n" + job("a", "thickness: 0.063")))),
               says("position: cannot say without the work's position"));
}

TEST_CASE("coupons are numbered, each with what it is for, and the plan says whether it is the smallest") {
    Desk desk;
    const std::string out = wide(
        document_of(planned(desk, plan_head + "work:\n" + job("a", "position: F, thickness: 0.032 to 0.5"))));
    CHECK_THAT(out, says("2 coupons to weld by "));
    CHECK_THAT(out, says("Smallest, proven, of "));
    CHECK_THAT(out, says("\n1. "));
    CHECK_THAT(out, says("\n2. "));
    CHECK_THAT(out, says("- for a\n"));
    CHECK_THAT(out, says("examinations: none are known; name criteria and classes in the work file"));
    CHECK_THAT(out, says("An aid, not the code"));
    const auto none = planned(desk, plan_head + "work:\n" + job("a", "thickness: 0.063"));
    CHECK_THAT(wide(document_of(none)), says("0 coupons to weld"));
}

TEST_CASE("examinations come with their reason: magnetic or not, groove or fillet, by class") {
    Desk desk;
    const std::string set = desk.file("s.yaml");
    write_file(set, R"(set: s
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
)");
    const auto exams = [&](const std::string &jobs) {
        return wide(document_of(planned(desk, plan_head + "work:\n" + jobs, set)));
    };
    const std::string groove = exams(job("a", "position: F, thickness: 0.063, class: A, magnetic: no"));
    CHECK_THAT(groove, says("judged to class A of s"));
    CHECK_THAT(groove, says("- PT: c2"));
    CHECK(groove.find("MT or PT") == std::string::npos);
    CHECK_THAT(groove, says("not magnetic: MT finds nothing, PT takes its place"));
    CHECK_THAT(groove, says("RT: c3, house; because joint is groove"));
    CHECK(exams(job("a", "position: F, thickness: 0.063, class: B, magnetic: yes")).find("RT:") ==
          std::string::npos);
    // The strictest class of the jobs decides.
    CHECK_THAT(exams(job("a", "position: F, thickness: 0.063, class: B, magnetic: yes") +
                     job("b", "position: F, thickness: 0.07, class: A, magnetic: yes")),
               says("RT: c3"));
    const std::string fillet =
        exams(job("f", "position: F, thickness: 0.063, class: A, magnetic: yes", "fillet"));
    CHECK_THAT(fillet, says("MT or PT: c2"));
    CHECK_THAT(fillet, says("a fillet is not radiographed"));
    CHECK(fillet.find("RT: c3") == std::string::npos);
}

TEST_CASE("what is held stands before the plan, with what keeps it from covering the rest") {
    Desk desk;
    HeldTest held;
    held.number = 2;
    held.rules = shipped_range_rules("mil-std-1595a");
    held.test = weld("joint groove, form sheet, process GTAW, metal group I, position 1G, thickness 0.05 in");
    held.validity.reason = "without a fixed end";
    held.range = range_of(*held.rules, held.test);
    HeldWork work{"L1", parse_day("2026-11-25"), {}};
    work.plan = planned(desk,
                        plan_head + "work:\n" + job("a", "position: F, thickness: 0.05") +
                            job("b", "position: V, thickness: 0.05"),
                        "", {held});
    const std::string out = wide(document_of(work));
    CHECK_THAT(out, says("Welder L1 holds by mil-std-1595a on 2026-11-25:\n  - #2 groove, sheet, GTAW, 1G"));
    CHECK_THAT(out, says(": valid, without a fixed end"));
    CHECK_THAT(out, says("What is held does not cover:\n  - b, for one groove"));
    CHECK_THAT(out, says("- nearest is #2\n"));
    CHECK_THAT(out, says("position V: this test allows F ["));
    CHECK_THAT(out, says("Covered already: a\n"));
    CHECK_THAT(out, says("1 coupon to weld"));
    work.plan.held.clear();
    CHECK_THAT(wide(document_of(work)), says("on 2026-11-25:\n  - nothing\n"));
}

TEST_CASE("a plan says what is proven, and no more") {
    Desk desk;
    PlanResult plan = planned(desk, plan_head + "work:\n" + job("a", "position: F, thickness: 0.032 to 0.5"));
    const auto said = [&] { return wide(document_of(plan)); };
    CHECK_THAT(said(), says("Smallest, proven, of"));
    CHECK(said().find("Best found") == std::string::npos);
    CHECK(plan.at_least == 2);
    plan.minimal = false;
    plan.at_least = 1;
    CHECK_THAT(said(), says("Best found, at least 1, of"));
    CHECK(said().find("proven") == std::string::npos);
}
