#include "catch.hpp"
#include "qualify/plan.hpp"
#include "qualify/welds.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

Work work_from(const std::string &text) {
    const LoadedWork loaded = load_work(text, "", shipped_range_rules);
    INFO((loaded.issues.empty() ? "" : loaded.issues.front().text));
    REQUIRE(loaded.work);
    return *loaded.work;
}

std::string errors_of_work(const std::string &text) {
    std::string out;
    for (const auto &issue : load_work(text, "", shipped_range_rules).issues)
        out += print(issue, "w.yaml", text);
    return out;
}

const std::string head = "rules: mil-std-1595a\nunits: in\nwork:\n";

std::string sheet_job(const std::string &id, const std::string &more) {
    return "  - {id: " + id + ", joint: groove, form: sheet, process: GTAW, metal group: I, " + more + "}\n";
}

} // namespace

TEST_CASE("one coupon covers what lies within 0.67 T to 4 T, two what does not") {
    CHECK(plan_tests(work_from(head + sheet_job("a", "position: F, thickness: 0.032 to 0.128")))
              .coupons.size() == 1);
    const Plan two = plan_tests(work_from(head + sheet_job("a", "position: F, thickness: 0.032 to 0.5")));
    CHECK(two.coupons.size() == 2);
    CHECK(two.minimal);
    CHECK(two.at_least == 2);
    CHECK(two.uncovered.empty());
}

TEST_CASE("several coupons together cover the positions that one cannot") {
    // A flat sheet test in one position gives that position and flat: three for all four, by these rules.
    const Plan plan =
        plan_tests(work_from(head + sheet_job("a", "position: [F, H, V, O], thickness: 0.063")));
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

TEST_CASE("no coupon is planned that cannot be made: a weld as thick as its tube") {
    const auto tube = [](const std::string &id, const std::string &diameter, const std::string &weld) {
        return "  - {id: " + id +
               ", joint: groove, form: tube, process: GTAW, metal group: P1, filler group: F6, backing: "
               "without, position: H, diameter: " +
               diameter + ", weld thickness: " + weld + "}\n";
    };
    const Work work = work_from("rules: asme-ix\nunits: in\nwork:\n" + tube("thick", "4.5", "0.531") +
                                tube("tiny", "0.5", "0.049"));
    const Plan plan = plan_tests(work);
    CHECK(plan.uncovered.empty());
    CHECK(plan.minimal);
    CHECK(plan.coupons.size() == 2);
    for (const auto &coupon : plan.coupons) {
        const auto &diameter = coupon.test.size(Trait::diameter),
                   &weld = coupon.test.size(Trait::weld_thickness);
        CHECK((!diameter || !weld || *weld + *weld < *diameter));
    }
}

TEST_CASE("the stock limits what is proposed, and what it cannot do is said with the reason") {
    const std::string text = "rules: mil-std-1595a\nunits: in\nstock: {thickness: [0.063]}\nwork:\n" +
                             sheet_job("thin", "position: F, thickness: 0.05") +
                             sheet_job("thick", "position: F, thickness: 0.3");
    const Work work = work_from(text);
    const Plan plan = plan_tests(work);
    REQUIRE(plan.coupons.size() == 1);
    CHECK(*plan.coupons[0].test.size(Trait::thickness) == Exact(1'600'200));
    REQUIRE(plan.uncovered.size() == 1);
    CHECK(work.jobs[plan.uncovered[0].job].id == "thick");
    REQUIRE(plan.uncovered[0].fails.size() == 1);
    CHECK(plan.uncovered[0].fails[0].variable->of == Trait::thickness);
    CHECK(plan.uncovered[0].fails[0].covered == Truth::no);
}

TEST_CASE("work that lacks a datum is not covered, and the plan asks for it") {
    const Work work = work_from(head + sheet_job("a", "thickness: 0.063"));
    const Plan plan = plan_tests(work);
    CHECK(plan.coupons.empty());
    REQUIRE(plan.uncovered.size() == 1);
    REQUIRE(plan.uncovered[0].fails.size() == 1);
    CHECK(plan.uncovered[0].fails[0].covered == Truth::unknown);
    CHECK(plan.uncovered[0].fails[0].lacks == std::vector<Lack>{{Trait::position, Lack::Of::work}});
}

TEST_CASE("what is held is taken off; the rest is planned") {
    const Work work = work_from(head + sheet_job("a", "position: F, thickness: 0.05") +
                                sheet_job("b", "position: V, thickness: 0.05"));
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
    const Work wide = work_from(head + sheet_job("a", "position: F, thickness: 0.05 to 0.5"));
    CHECK(plan_tests(wide, {held}).coupons.size() == 1);
    CHECK(plan_tests(wide).coupons.size() == 2);
}

TEST_CASE("mistakes in a work file are told with their place") {
    const std::vector<std::pair<std::string, std::string>> rows{
        {head + sheet_job("a", "position: Q"), "w.yaml:4:"},
        {head + sheet_job("a", "position: Q"),
         "'Q' is not known to mil-std-1595a for work; expected F, H, V or O"},
        {head + sheet_job("a", "thickness: 0.2 to 0.1"), "ends below where it begins"},
        {head + sheet_job("a", "thickness: thick"), "'thick' does not begin with a number"},
        {head + sheet_job("a", "thicknes: 0.1"), "unknown key 'thicknes'"},
        {head + sheet_job("a", "magnetic: perhaps"), "expected yes or no"},
        {head + sheet_job("a", "position: F") + sheet_job("a", "position: F"),
         "a weld above has the same id"},
        {"rules: mil-std-1595a\nunits: in\nwork: []\n", "there is no weld"},
        {"rules: mil-std-1595a\nunits: feet\nwork: []\n", "expected in or mm"},
        {"units: in\nwork: []\n", "'rules' is missing"},
        {"rules: mil-std-1595a\nunits: in\nstock: {position: [1G]}\nwork: []\n", "unknown key 'position'"},
    };
    for (const auto &[text, expected] : rows) CHECK_THAT(errors_of_work(text), says(expected));
}
