#include "catch.hpp"
#include "run.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

using namespace beadbook::test;

namespace {

/// A coupon of welder L1, examined with VT and RT, that its criteria accept.
void coupon(const Program &run, const std::string &id, const std::string &welded,
            const std::string &grade = "passed", const std::vector<std::string> &more = {}) {
    std::vector<std::string> words{"register",    id,       "--criteria",       "mil-hdbk-1890-table-3",
                                   "--class",     "3",      "--welder",         "L1",
                                   "--joint",     "groove", "--form",           "tube",
                                   "--seam",      "girth",  "--diameter",       "2in",
                                   "--thickness", "0.15in", "--weld-thickness", "0.15in",
                                   "--magnetic",  "yes",    "--welded",         welded};
    for (const auto &[option, value] :
         std::vector<std::pair<std::string, std::string>>{{"--process", "GTAW"},
                                                          {"--position", "6G"},
                                                          {"--metal-group", "P1"},
                                                          {"--filler-group", "F6"},
                                                          {"--backing", "without"},
                                                          {"--progression", "up"}}) {
        if (std::find(more.begin(), more.end(), option) != more.end()) continue;
        words.push_back(option);
        words.push_back(value);
    }
    words.insert(words.end(), more.begin(), more.end());
    run.ok(words);
    for (const char *exam : {"VT", "MT", "RT"})
        run.ok({"exam", id, exam, "--examiner", "A. Field", "--level", "II", "--date", welded});
    std::vector<std::string> graded{"grade", id, grade};
    if (grade == "failed") graded.insert(graded.end(), {"--remark", "bends opened"});
    run.ok(graded);
}

} // namespace

TEST_CASE("a graded coupon qualifies its welder; what is missing is refused with the reason") {
    const Program run;
    CHECK_THAT(run({"qualify", "Q-1", "--rules", "asme-ix"}).err, says("no record yet"));
    run.ok({"enrol", "L1", "--name", "J. Reef"});
    CHECK_THAT(run({"qualify", "Q-1", "--rules", "asme-ix"}).err, says("there is no coupon 'Q-1'"));
    run.ok({"register", "Q-0", "--criteria", "mil-hdbk-1890-table-3", "--class", "3"});
    CHECK_THAT(run({"qualify", "Q-0", "--rules", "asme-ix"}).err, says("names no welder"));
    run.ok({"change", "Q-0", "--welder", "L9", "--why", "forgot"});
    CHECK_THAT(run({"qualify", "Q-0", "--rules", "asme-ix"}).err, says("there is no welder 'L9'"));
    run.ok({"change", "Q-0", "--welder", "L1", "--why", "slip"});
    CHECK_THAT(run({"qualify", "Q-0", "--rules", "asme-ix"}).err,
               says("only a coupon that was graded passed"));
    coupon(run, "Q-1", "2026-10-05");
    CHECK_THAT(run({"qualify", "Q-1", "--rules", "asme-9"}).err, says("did you mean 'asme-ix'?"));
    CHECK(run({"qualify", "Q-1"}).code == 2);
    CHECK_THAT(run.ok({"qualify", "Q-1", "--rules", "asme-ix"}), says("holds #1 GTAW by asme-ix: valid"));
    CHECK_THAT(run({"qualify", "Q-1", "--rules", "asme-ix"}).err, says("already, #1"));
    CHECK_THAT(run({"qualify", "Q-1", "--rules", "aws-d17.1"}).err,
               says("metal group: 'P1' is not known to aws-d17.1"));
    CHECK_THAT(run.ok({"qualify", "Q-1", "--rules", "aws-d17.1", "--metal-group", "Ia"}), says("#2"));
    CHECK_THAT(run({"qualify", "Q-1", "--rules", "mil-std-1595a", "--position", "2G"}).err,
               says("says position '6G'"));
    CHECK(run({"qualify", "Q-1", "--rules", "asme-ix", "--way", "b"}).code == 3);
    coupon(run, "Q-2", "2026-12-01");
    CHECK_THAT(run({"qualify", "Q-2", "--rules", "asme-ix"}).err, says("which is to come"));
    coupon(run, "Q-3", "2026-10-05", "passed", {"--mechanical", "failed"});
    CHECK_THAT(run({"qualify", "Q-3", "--rules", "asme-ix"}).err, says("its mechanical tests failed"));
}

TEST_CASE("a coupon that is graded failed later qualifies nobody, nor does an exam that was not valid") {
    const Program run;
    run.ok({"enrol", "L1"});
    coupon(run, "Q-1", "2026-10-05");
    run.ok({"qualify", "Q-1", "--rules", "asme-ix"});
    run.ok({"grade", "Q-1", "failed", "--remark", "the film was read again"});
    CHECK_THAT(run.ok({"welder", "L1"}), says("revoked, coupon Q-1 was graded failed on 2026-11-25"));
    coupon(run, "Q-2", "2026-10-06", "passed", {"--position", "1G"});
    run.ok({"exam", "Q-2", "VT", "--practice", "asme-v-vt", "--condition", "light=10 fc", "--replaces", "1",
            "--why", "the light was measured"});
    CHECK_THAT(run({"qualify", "Q-2", "--rules", "asme-ix"}).err, says("no VT on record"));
}

TEST_CASE("examinations that the rules ask are demanded, and an override keeps its reason") {
    const Program run;
    run.ok({"enrol", "L1"});
    run.ok({"register", "Q-1", "--criteria", "mil-hdbk-1890-table-3", "--class", "3", "--welder", "L1",
            "--joint", "groove", "--process", "GMAW", "--transfer", "short-circuit", "--thickness", "0.15in",
            "--welded", "2026-10-05"});
    run.ok({"exam", "Q-1", "VT"});
    run.ok({"grade", "Q-1", "passed", "--remark", "seen"});
    const Run refused = run({"qualify", "Q-1", "--rules", "asme-ix"});
    CHECK(refused.code == 3);
    CHECK_THAT(refused.err, says("no RT or mechanical tests"));
    CHECK_THAT(refused.err, says("QW-304"));
    run.ok({"qualify", "Q-1", "--rules", "asme-ix", "--override", "the contract waives the bends"});
    const auto json = nlohmann::json::parse(run.ok({"record", "L1", "1", "--json"}));
    CHECK(json["qualification"]["override"] == "the contract waives the bends");
    CHECK(json["qualification"]["overridden"].size() == 2);
    CHECK(json["qualification"]["evidence"]["grade"]["against verdict"] == true);
    CHECK_THAT(run.ok({"record", "L1", "1"}), says("the contract waives the bends"));
    CHECK_THAT(run.ok({"record", "L1", "1"}), says("against the verdict"));
}

TEST_CASE("after a failed test two coupons must pass, or one after training") {
    const Program run;
    run.ok({"enrol", "L1"});
    coupon(run, "Q-1", "2026-10-05", "failed");
    coupon(run, "Q-2", "2026-10-06");
    CHECK_THAT(run({"qualify", "Q-2", "--rules", "asme-ix"}).err,
               says("coupon Q-1 failed on 2026-10-05: 2 coupons must pass, 1 did [QW-321.2, read]"));
    // Another position is another kind of test.
    coupon(run, "Q-5", "2026-10-06", "passed", {"--position", "2G"});
    run.ok({"qualify", "Q-5", "--rules", "asme-ix"});
    coupon(run, "Q-3", "2026-10-06");
    CHECK_THAT(run.ok({"qualify", "Q-3", "--rules", "asme-ix"}), says("#2"));
    CHECK_THAT(run.ok({"record", "L1", "2"}), says("coupons [\"Q-2\",\"Q-3\"]"));

    const Program other;
    other.ok({"enrol", "L1"});
    coupon(other, "Q-1", "2026-10-05", "failed");
    other.ok({"trained", "L1", "GTAW", "--text", "root runs", "--date", "2026-10-08"});
    coupon(other, "Q-2", "2026-10-12");
    other.ok({"qualify", "Q-2", "--rules", "asme-ix"});
}

TEST_CASE("practice coupons neither qualify nor count as failed tests") {
    const Program run;
    run.ok({"enrol", "L1"});
    coupon(run, "Q-1", "2026-10-05", "failed", {"--purpose", "practice"});
    coupon(run, "Q-2", "2026-10-06", "passed", {"--purpose", "practice"});
    CHECK_THAT(run({"qualify", "Q-2", "--rules", "asme-ix"}).err, says("was welded for practice"));
    coupon(run, "Q-3", "2026-10-07", "passed", {"--purpose", "test"});
    run.ok({"qualify", "Q-3", "--rules", "asme-ix"});
}

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

TEST_CASE("use, lapse, the due list, renewal and revocation") {
    const Program run;
    run.ok({"enrol", "L1", "--name", "J. Reef"});
    coupon(run, "Q-1", "2026-06-10");
    run.ok({"qualify", "Q-1", "--rules", "asme-ix"});
    CHECK_THAT(run.ok({"due"}), says("2026-12-10  in 15 days  L1  #1 GTAW by asme-ix  valid"));
    CHECK_THAT(run.ok({"due", "--days", "14"}), says("nothing is due through 2026-12-09"));
    CHECK_THAT(run.ok({"due", "--days", "15"}), says("in 15 days"));
    CHECK_THAT(run.ok({"used", "L1", "GTAW", "--date", "2026-11-02", "--work", "frame 12"}),
               says("holds through 2027-05-02"));
    CHECK_THAT(run({"used", "L1", "GTWA", "--work", "frame 12"}).err,
               says("holds no qualification in GTWA; did you mean 'GTAW'?"));
    CHECK(run({"used", "L1", "GTAW", "--date", "2026-11-26", "--work", "tomorrow"}).code == 3);
    CHECK(run({"used", "L1", "GTAW"}).code == 2);
    CHECK_THAT(run.ok({"welder", "L1", "--on", "2027-05-02"}), says("valid"));
    CHECK_THAT(run.ok({"welder", "L1", "--on", "2027-05-03"}),
               says("lapsed, not used within 6 months after 2026-11-02"));
    CHECK_THAT(run({"renew", "L1", "1", "Q-1"}).err, says("is valid, not lapsed"));

    // A slip is taken back, and stays in the history.
    const std::string history = run.ok({"history", "L1", "--welder"});
    const std::string entry =
        history.substr(history.rfind("\n", history.find("  use")) + 1,
                       history.find("  ", history.rfind("\n", history.find("  use")) + 1) -
                           history.rfind("\n", history.find("  use")) - 1);
    run.ok({"retract", "L1", entry, "--why", "wrong welder"});
    CHECK(run({"retract", "L1", entry, "--why", "again"}).code == 3);
    CHECK(run({"retract", "L1", "1", "--why", "the welder"}).code == 3);
    CHECK_THAT(run.ok({"history", "L1", "--welder"}), says("use withdrawn"));
    CHECK_THAT(run.ok({"due"}), says("2026-12-10"));

    run.ok({"revoke", "L1", "1", "--why", "same fault three times"});
    CHECK_THAT(run.ok({"welder", "L1"}), says("revoked on 2026-11-25"));
    CHECK_THAT(run.ok({"welders"}), says("revoked"));
    CHECK(run({"revoke", "L1", "7", "--why", "x"}).code == 3);
}

TEST_CASE("a lapsed qualification comes back by one coupon, where its rules say so") {
    const Program run;
    run.ok({"enrol", "L1"});
    coupon(run, "Q-1", "2025-06-10");
    run.ok({"qualify", "Q-1", "--rules", "asme-ix"});
    CHECK_THAT(run.ok({"due"}), says("over for"));
    CHECK_THAT(run.ok({"due"}), says("renew it: 1 coupon"));
    coupon(run, "Q-2", "2026-11-20", "passed", {"--position", "1G"});
    CHECK_THAT(run.ok({"renew", "L1", "1", "Q-2"}), says("valid, holds through 2027-05-20"));
    CHECK(run({"renew", "L1", "1", "Q-2"}).code == 3);
    coupon(run, "Q-3", "2021-06-10");
    run.ok({"qualify", "Q-3", "--rules", "mil-std-1595a"});
    CHECK_THAT(run({"renew", "L1", "2", "Q-2"}).err, says("nothing renews"));
}

TEST_CASE("carried in only with a paper, which is kept and given back") {
    const Program run;
    run.ok({"enrol", "L1"});
    const std::vector<std::string> words{"carry",
                                         "L1",
                                         "--rules",
                                         "iso-9606-1",
                                         "--way",
                                         "b",
                                         "--units",
                                         "mm",
                                         "--process",
                                         "141",
                                         "--joint",
                                         "groove",
                                         "--form",
                                         "tube",
                                         "--position",
                                         "H-L045",
                                         "--weld-thickness",
                                         "4",
                                         "--diameter",
                                         "89",
                                         "--welded",
                                         "2025-12-01"};
    CHECK(run(words).code == 2);
    auto with = words;
    with.insert(with.end(), {"--document", run.file("paper.pdf")});
    CHECK_THAT(run(with).err, says("cannot be read"));
    write_file(run.file("paper.pdf"), std::string("%PDF\0bytes", 10));
    CHECK_THAT(run.ok(with), says("#1 141 by iso-9606-1"));
    CHECK_THAT(run.ok({"record", "L1", "1", "--document", run.file("back.pdf")}), says("paper.pdf written"));
    CHECK(read_file(run.file("back.pdf")) == std::string("%PDF\0bytes", 10));
    CHECK(run({"record", "L1", "1", "--document", run.file("back.pdf")}).code == 3);
    run.ok({"used", "L1", "141", "--date", "2026-05-20", "--work", "line 4"});
    run.ok({"used", "L1", "141", "--date", "2026-11-10", "--work", "line 4"});
    CHECK_THAT(run({"extend", "L1", "1", "--weld", "2026-11-12 RT accepted"}).err,
               says("1 given; 2 welds of the last 6 months"));
    CHECK_THAT(
        run.ok({"extend", "L1", "1", "--weld", "2026-11-12 RT accepted", "--weld", "2026-08-02 RT accepted"}),
        says("lasts through 2029-12-01"));
    CHECK_THAT(run.ok({"verify", "--replay"}), says("1 ranges worked out again"));
}

TEST_CASE("the qualification record as text, JSON and page says the same, and escapes what people typed") {
    const Program run;
    run.ok({"enrol", "L1", "--name", "J. <Reef> & \"sons\""});
    coupon(run, "Q-1", "2026-10-05", "passed",
           {"--process", "GTAW 0.05in + SMAW 0.1in", "--filler-group", "F6 + F4"});
    CHECK_THAT(run.ok({"qualify", "Q-1", "--rules", "asme-ix"}), says("#2 SMAW"));
    const std::string text = run.ok({"record", "L1", "2"});
    for (const char *part : {"J. <Reef>", "weld thickness", "up to 0.2 in", "F1, F2, F3 and F4",
                             "mil-hdbk-1890-table-3", "SHA-256", "head of the record", "2026-10-05",
                             "level II", "passed for class 3", "An aid, not the code"})
        CHECK_THAT(text, says(part));
    const auto json = nlohmann::json::parse(run.ok({"record", "L1", "2", "--json"}));
    CHECK(json["test"]["weld thickness"] == "0.1 in");
    CHECK(json["until"] == "2027-04-05");
    run.ok({"record", "L1", "2", "--html", run.file("r.html")});
    const std::string page = read_file(run.file("r.html"));
    CHECK_THAT(page, says("J. &lt;Reef&gt; &amp; &quot;sons&quot;"));
    CHECK(page.find("<Reef>") == std::string::npos);
    CHECK_THAT(page, says("up to 0.2 in"));
    CHECK_THAT(page, says("An aid, not the code"));
    CHECK_THAT(page, says("@page"));
    CHECK(run({"record", "L1", "2", "--html", run.file("r.html")}).code == 3);
    CHECK(run({"record", "L1", "3"}).code == 3);
}

TEST_CASE("range and plan on the command line: exit codes, JSON, and nonsense") {
    const Program run;
    CHECK_THAT(run.ok({"range", "--rules", "aws-d17.1", "--joint", "groove", "--form", "tube", "--thickness",
                       "0.045in"}),
               says("from 0.03015 in to 0.18 in  [thickness qualified, read]"));
    const auto json =
        nlohmann::json::parse(run.ok({"range", "--json", "--rules", "aws-d17.1", "--thickness", "0.045in"}));
    CHECK(json["tests"][0]["test"]["thickness"] == "0.045 in");
    CHECK(run({"range", "--joint", "groove"}).code == 2);
    CHECK(run({"range", "--rules", "aws-d17.1"}).code == 2);
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

TEST_CASE("a coupon and a welder may have the same mark") {
    const Program run;
    run.ok({"enrol", "X"});
    run.ok({"register", "X"});
    CHECK(run.ok({"coupons"}).find("X ") != std::string::npos);
    CHECK_THAT(run.ok({"welder", "X"}), says("holds no qualification"));
    CHECK(run({"enrol", "X"}).code == 3);
    run.ok({"enrol", "X", "--name", "A. Buoy", "--why", "name came later"});
    CHECK(run({"enrol", "X", "--name", "A. Buoy", "--why", "twice"}).code == 3);
    CHECK_THAT(run.ok({"welder", "X"}), says("A. Buoy"));
}
