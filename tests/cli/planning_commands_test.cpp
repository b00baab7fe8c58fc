#include "catch.hpp"
#include "run.hpp"

#include <nlohmann/json.hpp>

using namespace beadbook::test;

TEST_CASE("a work file finds the files that it names beside itself") {
    const Program run;
    write_file(run.file("work.yaml"), "rules: ./mine.yaml\ncriteria: ./none.yaml\nunits: in\nwork:\n  - {id: "
                                      "a, joint: groove, thickness: 1}\n");
    write_file(run.file("mine.yaml"), "rules: mine\ntitle: t\nedition: e\nunits: in\nvariables: "
                                      "[thickness]\nranges: [{id: a, of: thickness, "
                                      "allows: same, clause: c, standing: {house: x}}]\nvalidity: [{id: v, "
                                      "clause: c, standing: {house: x}}]\n");
    CHECK_THAT(run({"plan", run.file("work.yaml")}).err, says(run.file("none.yaml") + ": cannot be read"));
    CHECK(run({"plan", run.file("work.yaml"), "--criteria", "mil-std-2219a"}).code == 0);
}

TEST_CASE("range and plan on the command line: exit codes, JSON, and nonsense") {
    const Program run;
    CHECK_THAT(run.ok({"range", "--rules", "aws-d17.1", "--joint", "groove", "--form", "tube", "--thickness",
                       "0.045in"}),
               says("from 0.03 in (computed 0.03015 in) to 0.18 in\n      [thickness qualified, read]"));
    const auto json =
        nlohmann::json::parse(run.ok({"range", "--json", "--rules", "aws-d17.1", "--thickness", "0.045in"}));
    CHECK(json["tests"][0]["test"]["thickness"] == "0.045 in");
    const Run nameless = run({"range", "--joint", "groove"});
    CHECK(nameless.code == 2);
    CHECK_THAT(nameless.err, says("by which rules? they are asme-ix, aws-d1.1"));
    CHECK_THAT(nameless.err, says("give --rules"));
    const Run bare = run({"range", "--rules", "aws-d17.1"});
    CHECK(bare.code == 2);
    CHECK_THAT(bare.err, says("of which test? name a coupon, or say what it is"));
    CHECK_THAT(run({"range", "--rules", "aws-d17.1", "--position", "6g"}).err, says("did you mean '6G'?"));
    const std::string file = run.file("work.yaml");
    write_file(file, "rules: mil-std-1595a\nunits: in\nwork:\n  - {id: a, joint: groove, form: sheet, "
                     "process: GTAW, metal group: I, "
                     "thickness: 0.05, position: F}\n");
    const auto plan = nlohmann::json::parse(run.ok({"plan", file, "--json"}));
    CHECK(plan["coupons"].size() == 1);
    CHECK(plan["minimal"] == true);
    write_file(file, "rules: mil-std-1595a\nunits: in\nwork:\n  - {id: a, joint: groove, form: sheet, "
                     "process: GTAW, metal group: I, "
                     "thickness: 0.05}\n");
    CHECK(run({"plan", file}).code == 1);
    CHECK(run({"plan", run.file("none.yaml")}).code == 3);
    write_file(file, "rules: mil-std-1595a\nunits: in\nwork:\n  - {id: a, joint: grove}\n");
    CHECK_THAT(run({"plan", file}).err,
               says("work.yaml:4:20: error: work.a.joint: joint: 'grove' is not known to mil-std-1595a for "
                    "work; expected groove, fillet or plug; did you mean 'groove'?"));
    CHECK_THAT(run.ok({"rules", "list"}), says("iso-9606-1"));
    CHECK_THAT(run.ok({"rules", "show", "asme-ix"}), says("QW-452.3"));
    CHECK(run({"rules", "check", file}).code == 3);
    CHECK(run({"rules", "frob"}).code == 2);
}
