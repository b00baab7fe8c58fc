#include "catch.hpp"
#include "operations/planning.hpp"

#include "desk.hpp"
#include "qualify/welds.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

const std::string plan_head = "rules: mil-std-1595a\nunits: in\n";

std::string job(const std::string &id, const std::string &more) {
    return "  - {id: " + id + ", joint: groove, form: sheet, process: GTAW, metal group: I, " + more + "}\n";
}

Done<PlanResult> planned(const std::string &text, const std::vector<HeldTest> &held = {}) {
    Desk desk;
    return plan_work(desk.catalogue, {{"typed work", text}, "", ""}, held);
}

HeldTest held(int number, const std::string &test, Validity::State state = Validity::State::valid,
              const std::string &rules = "mil-std-1595a") {
    HeldTest out;
    out.number = number;
    out.rules = shipped_range_rules(rules);
    out.test = weld(test);
    out.validity.state = state;
    out.range = range_of(*out.rules, out.test);
    return out;
}

const std::string flat_work =
    "joint groove, form sheet, process GTAW, metal group I, position 1G, thickness 0.05 in";

const std::string own_rules = R"(rules: shop
title: Shop
edition: house
source: house
units: in
words: {process: [GTAW]}
variables: [process]
ranges:
  - {id: process, of: process, allows: same, clause: "1", standing: {house: x}}
validity:
  - {id: always, clause: "2", standing: {house: x}}
)";

const std::string own_criteria = R"(set: shop-criteria
title: Shop
edition: house
units: in
classes: [A, B]
required exams:
  - {id: v, one of: VT, clause: c1, standing: {house: x}}
rules:
  - {id: r, types: porosity, exams: RT, allowed: none, clause: c, standing: {house: x}}
)";

} // namespace

TEST_CASE("files that a work file names lie beside it; text of no file takes them as they are named") {
    Desk desk;
    write_file(desk.file("shop.yaml"), own_rules);
    write_file(desk.file("shop-criteria.yaml"), own_criteria);
    const std::string text = "rules: shop.yaml\ncriteria: ./shop-criteria.yaml\nunits: in\nwork:\n"
                             "  - {id: a, process: GTAW, class: B}\n";
    write_file(desk.file("work.yaml"), text);
    const auto plan = plan_work(desk.catalogue, {{desk.file("work.yaml")}, "", ""}).value;
    CHECK(plan.work.rules->name == "shop");
    REQUIRE(plan.criteria);
    CHECK(plan.criteria->name == "shop-criteria");
    REQUIRE(plan.tests.size() == 1);
    CHECK(plan.tests[0].class_id == "B");
    CHECK(plan.ids(plan.tests[0].coupon.jobs) == std::vector<std::string>{"a"});
    CHECK(plan.covers_all() == Truth::unknown); // its rules do not say what accepts a test weld
    CHECK_THROWS_WITH(read_work(desk.catalogue, {"typed", text}), says("shop.yaml: cannot be read"));
    CHECK(read_work(desk.catalogue, {"typed", text}, desk.file("shop.yaml")).jobs.size() == 1);
}

TEST_CASE("rules and criteria of the request stand in for those that the work names") {
    Desk desk;
    const std::string text = "rules: none-such\ncriteria: none-such-either\nunits: in\nwork:\n" +
                             job("a", "position: F, thickness: 0.05, class: A");
    const auto plan = plan_work(desk.catalogue, {{"typed", text}, "mil-std-1595a", "mil-std-2219a"}).value;
    CHECK(plan.work.rules->name == "mil-std-1595a");
    CHECK(plan.criteria->name == "mil-std-2219a");
    CHECK_THROWS_WITH(plan_work(desk.catalogue, {{"typed", text}, "", ""}),
                      says("there are no rules 'none-such'"));
    CHECK_THROWS_WITH(plan_work(desk.catalogue, {{"typed", text}, "mil-std-1595a", ""}),
                      says("there is no criteria set 'none-such-either'"));
}

TEST_CASE("every mistake of a work file is told at once, with its place") {
    Desk desk;
    const std::string text =
        plan_head + "work:\n" + job("a", "position: Q") + job("b", "position: F, thicknes: 0.1");
    try {
        read_work(desk.catalogue, {"typed work", text});
        FAIL();
    } catch (const DataError &e) {
        CHECK_THAT(e.what(), says("the work file has mistakes:"));
        CHECK_THAT(e.what(), says("typed work:4:"));
        CHECK_THAT(e.what(), says("unknown key 'thicknes'"));
    }
    CHECK_THROWS_AS(read_work(desk.catalogue, {desk.file("none.yaml")}), DataError);
}

TEST_CASE("a class that the criteria do not have is refused, with all jobs that name one") {
    const std::string work = plan_head + "criteria: mil-std-2219a\nwork:\n" +
                             job("a", "position: F, thickness: 0.05, class: Q") +
                             job("b", "position: F, thickness: 0.05, class: A") +
                             job("c", "position: F, thickness: 0.05, class: 1");
    try {
        planned(work);
        FAIL("taken");
    } catch (const DataError &e) {
        CHECK_THAT(e.what(), says("a: there is no class 'Q' in mil-std-2219a; expected A, B or C"));
        CHECK_THAT(e.what(), says("c: there is no class '1' in mil-std-2219a"));
        CHECK_THAT(e.what(), !says("b:"));
    }
}

TEST_CASE("what is held and valid by the work's rules is taken off, and the rest is planned") {
    const std::string text = plan_head + "work:\n" + job("a", "position: F, thickness: 0.05") +
                             job("b", "position: V, thickness: 0.05");
    const auto plan = planned(text, {held(3, flat_work)}).value;
    CHECK(plan.held_jobs == std::vector<std::string>{"a"});
    REQUIRE(plan.tests.size() == 1);
    CHECK(plan.tests[0].coupon.test.word(Trait::position) == "3G");
    REQUIRE(plan.missed.size() == 1);
    CHECK(plan.missed[0].job == "b");
    CHECK(plan.missed[0].number == 3);
    REQUIRE(plan.missed[0].because.size() == 1);
    CHECK(plan.missed[0].because[0].cover.variable->of == Trait::position);
    REQUIRE_FALSE(plan.missed[0].because[0].allows.parts.empty());
    CHECK(plan.missed[0].because[0].allows.parts[0].words == std::vector<std::string>{"F"});

    // What has lapsed is told but counts for nothing; what is by other rules is not told at all.
    const auto without =
        planned(text, {held(1, flat_work, Validity::State::lapsed),
                       held(2, "process GTAW", Validity::State::valid, "aws-d17.1"), held(4, flat_work)})
            .value;
    REQUIRE(without.held.size() == 2);
    CHECK(without.held[0].number == 1);
    CHECK(without.held_jobs == std::vector<std::string>{"a"});
    CHECK(without.missed.at(0).number == 4);
    CHECK(planned(text, {held(1, flat_work, Validity::State::expired)}).value.held_jobs.empty());
}

TEST_CASE("uncovered work comes with the nearest coupon and what it allows") {
    const auto plan =
        planned(plan_head + "stock: {thickness: [0.063]}\nwork:\n" +
                job("thin", "position: F, thickness: 0.05") + job("thick", "position: F, thickness: 0.3"))
            .value;
    CHECK(plan.covers_all() == Truth::no);
    REQUIRE(plan.uncovered.size() == 1);
    const UncoveredWork &one = plan.uncovered[0];
    CHECK(one.job == "thick");
    REQUIRE(one.nearest);
    REQUIRE(one.because.size() == 1);
    CHECK(one.because[0].cover.variable->of == Trait::thickness);
    // 4 T of 0.063 in: MIL-STD-1595A, from memory.
    REQUIRE(one.because[0].allows.parts.size() == 1);
    CHECK(one.because[0].allows.parts[0].edges.back().second == Exact(6'400'800));
    CHECK(plan.minimal);
    CHECK(plan.candidates > 0);

    const auto lacking = planned(plan_head + "work:\n" + job("a", "thickness: 0.063")).value;
    REQUIRE(lacking.uncovered.size() == 1);
    CHECK(lacking.uncovered[0].because.at(0).cover.covered == Truth::unknown);
    CHECK(name_of(lacking.uncovered[0].because.at(0).cover.lacks.at(0)) == "the work's position");
}

TEST_CASE("of a size of which no limit was read the test's own is certain, and a span of sizes never is") {
    // AWS D17.1: whether and how the diameter of a tube limits a qualification was not read.
    const std::string d17_head = "rules: aws-d17.1\nunits: in\n";
    const auto tube = [](const std::string &id, const std::string &diameter) {
        return "  - {id: " + id +
               ", joint: groove, form: tube, process: GTAW, metal group: Ia, position: F, " +
               "thickness: 0.05" + (diameter.empty() ? "" : ", diameter: " + diameter) + "}\n";
    };
    const HeldTest two = held(1,
                              "joint groove, form tube, process GTAW, metal group Ia, position 1G, "
                              "thickness 0.05 in, diameter 2 in",
                              Validity::State::valid, "aws-d17.1");
    const auto work = d17_head + "work:\n" + tube("same", "2") + tube("other", "1.5") +
                      tube("span", "1 to 2") + tube("unsaid", "") +

                      "  - {id: sheet, joint: groove, form: sheet, process: GTAW, metal group: Ia, position: "
                      "F, thickness: 0.05}\n";
    const auto plan = planned(work, {two}).value;
    const auto answer = [&](std::size_t j) { return plan.jobs.at(j).allowed; };
    const std::vector<Lack> rules_lack{{Trait::diameter, Lack::Of::rules}};
    CHECK(answer(0) == Truth::yes);
    CHECK(plan.jobs[0].unread.empty());
    CHECK(answer(1) == Truth::unknown);
    CHECK(plan.jobs[1].lacks == rules_lack);
    CHECK(plan.jobs[1].unread ==
          std::vector<std::string>{"whether and how the diameter of a tube limits a qualification"});
    CHECK(answer(2) == Truth::unknown);
    CHECK(answer(3) == Truth::unknown);
    CHECK(std::count(plan.jobs[3].lacks.begin(), plan.jobs[3].lacks.end(),
                     Lack{Trait::diameter, Lack::Of::work}) == 1);
    CHECK(answer(4) == Truth::no);

    // The coupon for the other tube is of its diameter; of the span nothing is certain, and unsaid is
    // uncovered.
    CHECK(plan.held_jobs == std::vector<std::string>{"same"});
    const auto of_other = std::find_if(plan.tests.begin(), plan.tests.end(), [&](const PlannedTest &test) {
        const auto ids = plan.ids(test.coupon.jobs);
        return std::find(ids.begin(), ids.end(), "other") != ids.end();
    });
    REQUIRE(of_other != plan.tests.end());
    CHECK(of_other->coupon.test.size(Trait::diameter) == Exact(38'100'000));
    REQUIRE(plan.uncertain.size() == 1);
    CHECK(plan.uncertain[0].job == "span");
    CHECK(plan.uncertain[0].sizes.from == Exact(25'400'000));
    REQUIRE(plan.uncovered.size() == 1);
    CHECK(plan.uncovered[0].job == "unsaid");
    CHECK(plan.covers_all() == Truth::no);
    CHECK(planned(d17_head + "work:\n" + tube("span", "1 to 2")).value.covers_all() == Truth::unknown);
    CHECK(planned(d17_head + "work:\n" + tube("same", "2")).value.covers_all() == Truth::yes);
}

TEST_CASE("by rules that do not say what accepts a test weld nothing is allowed, but by a paper") {
    const std::string text = plan_head + "work:\n" + job("a", "position: F, thickness: 0.05");
    HeldTest one = held(1, flat_work);
    const auto plan = planned(text, {one}).value;
    CHECK(plan.jobs.at(0).allowed == Truth::unknown);
    CHECK(plan.jobs[0].by == std::vector<int>{1});
    CHECK(plan.jobs[0].unread == std::vector<std::string>{"which examinations a test weld needs",
                                                          "what a test weld is accepted by"});
    CHECK(plan.covers_all() == Truth::yes); // no more coupons are needed
    CHECK(planned(text).value.covers_all() == Truth::unknown);
    one.carried = true; // whoever issued the paper accepted it
    CHECK(planned(text, {one}).value.jobs.at(0).allowed == Truth::yes);
}

TEST_CASE("what a plan's coupons qualify allows all of its work that is certain") {
    const std::string text =
        "rules: aws-d17.1\nunits: in\nwork:\n"
        "  - {id: a, joint: groove, form: tube, process: GTAW, metal group: Ia, thickness: 0.065 to 0.12,"
        " diameter: 2, position: [F, H, V, O]}\n"
        "  - {id: b, joint: fillet, form: tube, process: GTAW, metal group: Ia, thickness: 0.083, diameter: "
        "1,"
        " position: [F, H]}\n"
        "  - {id: c, joint: groove, form: tube, process: GTAW, metal group: IIa, thickness: 0.03,"
        " diameter: 1/2, position: F}\n";
    const auto plan = planned(text).value;
    CHECK(plan.covers_all() == Truth::yes);
    std::vector<HeldTest> passed;
    for (const auto &test : plan.tests) {
        HeldTest one;
        one.number = static_cast<int>(passed.size()) + 1;
        one.rules = plan.work.rules;
        one.test = test.coupon.test;
        one.validity.state = Validity::State::valid;
        one.range = range_of(*one.rules, one.test);
        passed.push_back(std::move(one));
    }
    const auto after = planned(text, passed).value;
    CHECK(after.allows_all() == Truth::yes);
    CHECK(after.tests.empty());
}

TEST_CASE("coupons are planned to a class by which the rules accept a test weld") {
    // D17.1-01-I01: methods and limits of Class A apply to the test weld.
    const std::string text =
        "rules: aws-d17.1\ncriteria: aws-d17.1\nunits: in\nwork:\n"
        "  - {id: b, joint: groove, form: sheet, process: GTAW, metal group: Ia, position: F,"
        " thickness: 0.05, class: B}\n"
        "  - {id: a, joint: groove, form: sheet, process: GTAW, metal group: IV, position: F,"
        " thickness: 0.05, class: A}\n";
    const auto plan = planned(text).value;
    REQUIRE(plan.tests.size() == 2);
    for (const auto &test : plan.tests) {
        const bool of_b = plan.ids(test.coupon.jobs) == std::vector<std::string>{"b"};
        CHECK(test.class_id == "A");
        CHECK(test.asked_class == (of_b ? "B" : ""));
    }
    // AWS D1.1 takes a class that is no stricter one, but another.
    const std::string d11 =
        "rules: aws-d1.1\ncriteria: aws-d1.1-visual\nunits: in\nwork:\n  - {id: a, joint: groove,"
        " form: plate, process: SMAW, position: F, thickness: 0.5, class: static}\n";
    for (const auto &test : planned(d11).value.tests) CHECK(test.class_id == "welder test");
    // A set that the rules do not take keeps the work's own class.
    Desk desk;
    const auto other = plan_work(desk.catalogue, {{"typed work", text}, "", "mil-std-2219a"}).value;
    for (const auto &test : other.tests) CHECK(test.asked_class.empty());
}

TEST_CASE("what the work tells and no rule looks at is named") {
    const std::string d17 =
        "rules: aws-d17.1\nunits: in\nwork:\n"
        "  - {id: a, joint: groove, form: sheet, process: GTAW, metal group: Ia, position: F,"
        " thickness: 0.05";
    CHECK(planned(d17 + "}\n").notes.empty());
    CHECK(planned(d17 + ", progression: down, layers: 12}\n").notes ==
          std::vector<std::string>{
              "no rule of aws-d17.1 that was read looks at progression and layers, so what "
              "the work tells of them was not compared"});
}
