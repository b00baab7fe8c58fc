// plan, may and range print JSON as their schemas say, with what their text says.
#include "catch.hpp"

#include "cli/json.hpp"
#include "test_coupon.hpp"

using namespace beadbook::test;

namespace {

const std::string head = "rules: mil-std-1595a\nunits: in\n";

std::string job(const std::string &id, const std::string &more) {
    return "  - {id: " + id + ", joint: groove, form: sheet, process: GTAW, metal group: I, " + more + "}\n";
}

} // namespace

TEST_CASE("JSON of a plan: coupons with their examinations, and what stays uncovered", "[planning]") {
    const Program run;
    const std::string file = run.file("work.yaml");
    write_file(file, head + "criteria: mil-std-2219a\nstock: {thickness: [0.063]}\nwork:\n" +
                         job("thin", "position: F, thickness: 0.05, class: A, magnetic: no") +
                         job("other", "position: F, thickness: 0.05, class: A, magnetic: no") +
                         job("thick", "position: F, thickness: 0.3"));
    const auto plan = json(run, {"plan", file}, 1);
    REQUIRE(plan["coupons"].size() == 1);
    const auto &coupon = plan["coupons"][0];
    CHECK(coupon["for"] == std::vector<std::string>{"thin", "other"});
    CHECK(coupon["class"] == "A");
    CHECK(coupon["test"]["thickness"] == "0.063 in");
    REQUIRE_FALSE(coupon["exams"].empty());
    for (const auto &exam : coupon["exams"])
        CHECK(std::find(exam["one of"].begin(), exam["one of"].end(), "MT") == exam["one of"].end());
    CHECK(coupon["notes"][0] == "not magnetic: MT finds nothing, PT takes its place");
    CHECK(plan["criteria"] == "mil-std-2219a");
    CHECK(plan["minimal"] == true);
    REQUIRE(plan["uncovered"].size() == 1);
    CHECK(plan["uncovered"][0]["id"] == "thick");
    CHECK(plan["uncovered"][0]["nearest coupon"]["thickness"] == "0.063 in");
    CHECK_THAT(plan["uncovered"][0]["why"][0].get<std::string>(), says("0.048 in over"));
}

TEST_CASE("JSON of what a welder may do holds what the text says is held", "[planning]") {
    const Program run;
    run.ok({"enrol", "L1", "--name", "J. Reef"});
    test_coupon(run, "Q-1", "2026-10-05");
    run.ok({"qualify", "Q-1", "--rules", "asme-ix"});
    const std::string file = run.file("work.yaml");
    write_file(file,
               "rules: asme-ix\nunits: in\nwork:\n"
               "  - {id: pipe, joint: groove, form: tube, process: GTAW, metal group: P1, filler group: F6, "
               "backing: without, position: F, diameter: 4, weld thickness: 0.2, progression: up}\n"
               "  - {id: frame, joint: groove, form: plate, process: SMAW, metal group: P1, filler group: "
               "F4, backing: with, position: F, weld thickness: 0.2, progression: up}\n");
    const auto may = json(run, {"may", "L1", file}, 6);
    REQUIRE(may["jobs"].size() == 2);
    CHECK(may["jobs"][0]["allowed"] == "yes");
    CHECK(may["jobs"][0]["by"] == std::vector<int>{1});
    CHECK(may["jobs"][1]["allowed"] == "no");
    CHECK(may["welder"] == "L1");
    CHECK(may["on"] == "2026-11-25");
    REQUIRE(may["held"].size() == 1);
    CHECK(may["held"][0]["number"] == 1);
    CHECK(may["held"][0]["state"] == "valid");
    CHECK(may["held"][0]["test"]["process"] == "GTAW");
    CHECK(may["covered already"] == std::vector<std::string>{"pipe"});
    REQUIRE(may["not covered yet"].size() == 1);
    CHECK(may["not covered yet"][0]["id"] == "frame");
    CHECK(may["not covered yet"][0]["nearest"] == 1);
    CHECK(may["coupons"].size() == 1);
    const auto later = json(run, {"may", "L1", file, "--on", "2027-06-01"}, 6);
    CHECK(later["held"][0]["state"] == "lapsed");
    CHECK(later["jobs"][0]["renewals"][0]["number"] == 1);
    CHECK(later["jobs"][0]["renewals"][0]["coupons"] == 1);
}

TEST_CASE("JSON of a range, of a coupon that is described and of one on record", "[planning]") {
    const Program run;
    const auto described = json(run, {"range", "--rules", "aws-d17.1", "--thickness", "0.045in"});
    CHECK_FALSE(described.contains("coupon"));
    CHECK_FALSE(described["gaps"].empty());
    bool told = false;
    for (const auto &one : described["tests"][0]["range"]) {
        if (one["variable"] != "thickness") continue;
        told = true;
        CHECK(one["parts"][0]["allows"] == "from 0.03 in (computed 0.03015 in) to 0.18 in");
        CHECK(one["parts"][0]["ends"][0]["compared"] == "0.03 in");
        CHECK(one["parts"][0]["ends"][0]["computed"] == "0.03015 in");
        CHECK(one["parts"][0]["standing"] == "read");
    }
    CHECK(told);
    run.ok({"register", "T-1", "--process", "GTAW 1/8in + SMAW 3/8in", "--joint", "groove"});
    const auto recorded = json(run, {"range", "T-1", "--rules", "aws-d1.1"});
    CHECK(recorded["coupon"] == "T-1");
    CHECK(recorded["tests"].size() == 2);
}
