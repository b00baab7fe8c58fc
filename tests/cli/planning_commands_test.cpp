#include "catch.hpp"
#include "run.hpp"
#include "test_coupon.hpp"

#include <nlohmann/json.hpp>

using namespace beadbook::test;

namespace {

/// Wrapped lines as one, with single blanks.
std::string in_one_line(const std::string &text) {
    std::string out;
    for (const char c : text) {
        const char shown = c == '\n' ? ' ' : c;
        if (shown != ' ' || out.empty() || out.back() != ' ') out += shown;
    }
    return out;
}

} // namespace

TEST_CASE("a work file finds the files that it names beside itself") {
    const Program run;
    write_file(run.file("work.yaml"), "rules: ./mine.yaml\ncriteria: ./none.yaml\nunits: in\nwork:\n  - {id: "
                                      "a, joint: groove, thickness: 1}\n");
    write_file(run.file("mine.yaml"), "rules: mine\ntitle: t\nedition: e\nunits: in\nvariables: "
                                      "[thickness]\nranges: [{id: a, of: thickness, "
                                      "allows: same, clause: c, standing: {house: x}}]\nvalidity: [{id: v, "
                                      "clause: c, standing: {house: x}}]\n");
    CHECK_THAT(run({"plan", run.file("work.yaml")}).err, says(run.file("none.yaml") + ": cannot be read"));
    const Run own = run({"plan", run.file("work.yaml"), "--criteria", "mil-std-2219a"});
    CHECK(own.code == 5); // its rules do not say what accepts a test weld
    CHECK_THAT(own.out, says("by t (e; own file"));
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
    write_file(file, "rules: aws-d17.1\nunits: in\nwork:\n  - {id: a, joint: groove, form: sheet, "
                     "process: GTAW, metal group: Ia, "
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

TEST_CASE("may says yes, no or cannot say of each job, and ends with its own code", "[planning]") {
    const Program run;
    run.ok({"enrol", "L1", "--name", "J. Reef"});
    test_coupon(run, "Q-1", "2026-10-05");
    run.ok({"qualify", "Q-1", "--rules", "asme-ix"});
    const std::string file = run.file("work.yaml"), head = "rules: asme-ix\nunits: in\nwork:\n";
    const auto pipe = [](const std::string &id, const std::string &more) {
        return "  - {id: " + id +
               ", joint: groove, form: tube, process: GTAW, metal group: P1, filler group: F6, backing: "
               "without, position: F, weld thickness: 0.2, progression: up" +
               more + "}\n";
    };
    const auto may = [&](const std::string &jobs, const std::string &day = "2026-11-25") {
        write_file(file, head + jobs);
        return run({"may", "L1", file, "--on", day});
    };
    const Run yes = may(pipe("pipe", ", diameter: 4"));
    CHECK(yes.code == 0);
    CHECK_THAT(yes.out, says("\nyes: pipe, by #1\n"));
    const Run open = may(pipe("pipe", ", diameter: 4") + pipe("bare", ""));
    CHECK(open.code == 5);
    CHECK_THAT(open.out, says("\ncannot say: bare, without the work's diameter\n"));
    const Run no = may(pipe("bare", "") + pipe("thick", ", diameter: 0.1"));
    CHECK(no.code == 6);
    CHECK_THAT(no.out, says("\nno: thick\n"));
    // Six months without use: ASME IX QW-322.1 and QW-322.2(a). A renewal does, so no test is asked for.
    const Run lapsed = may(pipe("pipe", ", diameter: 4"), "2027-06-01");
    CHECK(lapsed.code == 6);
    CHECK_THAT(lapsed.out, says("\nno: pipe, until #1 (1 coupon) is renewed\n"));
    CHECK_THAT(lapsed.out, says("0 coupons to weld, beside 1 that renews #1, by "));
    CHECK_THAT(run.ok({"may", "--help"}), says("Ends with 6 if one is not allowed"));
    CHECK_THAT(run.ok({"may", "--help"}), says("6 work not allowed"));
}

TEST_CASE("what was not read of a tube's diameter is said by range, and leaves plan and may open",
          "[planning]") {
    const Program run;
    const std::string what = "not known: whether and how the diameter of a tube limits a qualification";
    for (const std::string rules : {"aws-d17.1", "mil-std-1595a"}) {
        CHECK_THAT(in_one_line(run.ok({"range", "--rules", rules, "--form", "tube"})),
                   says("diameter (in work with form tube): - same; cannot say without the test's diameter"));
        CHECK_THAT(in_one_line(run.ok({"range", "--rules", rules, "--form", "tube"})), says("else " + what));
        CHECK(in_one_line(run.ok({"range", "--rules", rules, "--form", "sheet"})).find("not known:") ==
              std::string::npos);
        run.ok({"enrol", "L" + rules});
        const std::string file = run.file("work.yaml");
        write_file(file, "rules: " + rules +
                             "\nunits: in\nwork:\n  - {id: a, form: tube}\n  - {id: b, form: "
                             "sheet}\n");
        const Run may = run({"may", "L" + rules, file});
        CHECK(may.code == 6);
        CHECK_THAT(may.out, says("\nno: a\n"));
        CHECK_THAT(may.out, says("\nno: b\n"));
        write_file(file, "rules: " + rules +
                             "\nunits: in\nwork:\n  - {id: a, joint: groove, form: tube, process: GTAW, "
                             "metal group: Ia, position: F, thickness: 0.05, diameter: 1 to 2}\n");
        const Run plan = run({"plan", file});
        CHECK(plan.code == 5);
        CHECK_THAT(in_one_line(plan.out),
                   says("Cannot say whether these coupons cover: - a, of diameter 1 in to "
                        "2 in: " +
                        what));
        CHECK(nlohmann::json::parse(run({"plan", file, "--json"}).out)["uncertain"][0]["id"] == "a");
    }
}
