#include "catch.hpp"
#include "schema.hpp"
#include "test_coupon.hpp"

#include <nlohmann/json.hpp>

using namespace beadbook::test;

TEST_CASE("qualify on the command line: messages, what mends them, and exit codes", "[standing]") {
    const Program run;
    CHECK_THAT(run({"qualify", "Q-1", "--rules", "asme-ix"}).err, says("no record yet"));
    run.ok({"enrol", "L1", "--name", "J. Reef"});
    CHECK_THAT(run({"qualify", "Q-1", "--rules", "asme-ix"}).err, says("there is no coupon 'Q-1'"));
    run.ok({"register", "Q-0", "--criteria", "mil-hdbk-1890-table-3", "--class", "3"});
    const Run nobody = run({"qualify", "Q-0", "--rules", "asme-ix"});
    CHECK(nobody.code == 3);
    CHECK_THAT(nobody.err, says("names no welder"));
    CHECK_THAT(nobody.err, says("'beadbook change Q-0 --welder \"...\" --why \"...\"'"));
    run.ok({"change", "Q-0", "--welder", "L9", "--why", "forgot"});
    CHECK_THAT(run({"qualify", "Q-0", "--rules", "asme-ix"}).err, says("there is no welder 'L9'"));
    run.ok({"change", "Q-0", "--welder", "L1", "--why", "slip"});
    const Run ungraded = run({"qualify", "Q-0", "--rules", "asme-ix"});
    CHECK_THAT(ungraded.err, says("only a coupon that was graded passed"));
    CHECK_THAT(ungraded.err, says("on which day was it welded?"));
    CHECK_THAT(ungraded.err, says("'beadbook change Q-0 --process \"...\" --why \"...\"'"));
    test_coupon(run, "Q-1", "2026-10-05");
    CHECK_THAT(run({"qualify", "Q-1", "--rules", "asme-9"}).err, says("did you mean 'asme-ix'?"));
    const Run lawless = run({"qualify", "Q-1"});
    CHECK(lawless.code == 2);
    CHECK_THAT(lawless.err, says("--rules"));
    CHECK_THAT(run.ok({"qualify", "Q-1", "--rules", "asme-ix"}), says("holds #1 GTAW by asme-ix: valid"));
    CHECK_THAT(run({"qualify", "Q-1", "--rules", "asme-ix"}).err, says("already, #1"));
    CHECK_THAT(run({"qualify", "Q-1", "--rules", "aws-d17.1"}).err,
               says("metal group: 'P1' is not known to aws-d17.1"));
    const std::string aside = run.ok({"qualify", "Q-1", "--rules", "aws-d17.1", "--metal-group", "Ia",
                                      "--override", "the contract names Table III"});
    CHECK_THAT(aside, says("#2"));
    CHECK_THAT(flat(aside), says("set aside: it was graded by asme-ix-tests, class test coupon"));
    const Run contradicted = run({"qualify", "Q-1", "--rules", "mil-std-1595a", "--position", "2G"});
    CHECK_THAT(contradicted.err, says("says position '6G'"));
    CHECK_THAT(contradicted.err, says("'beadbook change Q-1 --position \"...\" --why \"...\"'"));
    // What rules do not say as they are known here is told beside what is held by them.
    run.ok({"qualify", "Q-1", "--rules", "mil-std-1595a", "--position", "6G"});
    CHECK_THAT(flat(run.ok({"welder", "L1"})),
               says("not known here: which examinations a test weld needs and "
                    "what a test weld is accepted by"));
    test_coupon(run, "Q-2", "2026-10-05");
    CHECK(run({"qualify", "Q-2", "--rules", "asme-ix", "--way", "b"}).code == 3);
    test_coupon(run, "Q-4", "2026-12-01");
    CHECK_THAT(run({"qualify", "Q-4", "--rules", "asme-ix"}).err, says("which is to come"));
}

TEST_CASE("an override is asked for by name, and is kept and printed", "[standing]") {
    const Program run;
    run.ok({"enrol", "L1", "--name", "J. Reef"});
    run.ok({"register", "Q-1", "--criteria", "mil-hdbk-1890-table-3", "--class", "3", "--welder", "L1",
            "--joint", "groove", "--process", "GMAW", "--transfer", "short-circuit", "--thickness", "0.15in",
            "--welded", "2026-10-05"});
    run.ok({"exam", "Q-1", "VT", "--examiner", "A. Field", "--level", "II", "--found", "none"});
    run.ok({"grade", "Q-1", "passed", "--remark", "seen"});
    const Run refused = run({"qualify", "Q-1", "--rules", "asme-ix"});
    CHECK(refused.code == 3);
    CHECK_THAT(refused.err, says("no RT or mechanical tests"));
    CHECK_THAT(refused.err, says("QW-304"));
    CHECK_THAT(refused.err, says("give --override \"...\""));
    const std::string granted =
        flat(run.ok({"qualify", "Q-1", "--rules", "asme-ix", "--override", "the contract waives the bends"}));
    CHECK_THAT(granted, says("set aside: no RT or mechanical tests"));
    // QW-191, QW-194 (copies and training pages): a test coupon is accepted by Section IX's own limits.
    CHECK_THAT(granted, says("by asme-ix a test weld is accepted by asme-ix-tests"));
    CHECK_THAT(granted, says("because: the contract waives the bends"));
    const auto json = nlohmann::json::parse(run.ok({"record", "L1", "1", "--json"}));
    CHECK(json["qualification"]["override"] == "the contract waives the bends");
    CHECK(json["qualification"]["overridden"].size() == 4);
    CHECK(json["qualification"]["evidence"]["grade"]["against verdict"] == true);
    const std::string record = flat(run.ok({"record", "L1", "1"}));
    CHECK_THAT(record, says("the contract waives the bends"));
    CHECK_THAT(record, says("against the verdict"));
    CHECK_THAT(flat(run.ok({"welder", "L1"})), says("because: the contract waives the bends"));
}

TEST_CASE("the record names the coupons of a retest", "[standing]") {
    const Program run;
    run.ok({"enrol", "L1", "--name", "J. Reef"});
    test_coupon(run, "Q-1", "2026-10-05", "failed");
    test_coupon(run, "Q-2", "2026-10-06");
    test_coupon(run, "Q-3", "2026-10-06");
    run.ok({"qualify", "Q-3", "--rules", "asme-ix"});
    CHECK_THAT(flat(run.ok({"record", "L1", "1"})),
               says("after coupon Q-1 failed on 2026-10-05 (coupons Q-2 and Q-3)"));
}

TEST_CASE("a coupon that is graded failed later qualifies nobody, as 'welder' tells", "[standing]") {
    const Program run;
    run.ok({"enrol", "L1", "--name", "J. Reef"});
    test_coupon(run, "Q-1", "2026-10-05");
    run.ok({"qualify", "Q-1", "--rules", "asme-ix"});
    run.ok({"grade", "Q-1", "failed", "--remark", "the film was read again"});
    CHECK_THAT(flat(run.ok({"welder", "L1"})),
               says("no longer proved, coupon Q-1 was graded failed on 2026-11-25"));
    CHECK_THAT(flat(run.ok({"welders"})), says("#1 GTAW by asme-ix no longer proved"));
}

TEST_CASE("use, lapse, the due list, a slip, and revocation on the command line", "[standing]") {
    const Program run;
    run.ok({"enrol", "L1", "--name", "J. Reef"});
    test_coupon(run, "Q-1", "2026-06-10");
    // A pass alone grants nothing.
    CHECK_THAT(
        flat(run.ok({"welder", "L1"})),
        says("coupon Q-1 was graded passed and qualifies nothing yet: the instructor qualifies by it next"));
    const std::string before = run.ok({"welder", "L1", "--json"});
    CHECK(schema_faults("welder", before).empty());
    CHECK_THAT(before, says("to qualify"));
    run.ok({"qualify", "Q-1", "--rules", "asme-ix"});
    CHECK_THAT(run.ok({"welder", "L1"}), !says("qualifies nothing yet"));
    CHECK_THAT(flat(run.ok({"due"})),
               says("2026-12-10 in 15 days L1 #1 GTAW by asme-ix valid use the process and log it"));
    CHECK_THAT(
        run.ok({"due", "--days", "14"}),
        says("nothing is due through 2026-12-09; the next day is 2026-12-10, #1 GTAW by asme-ix of L1"));
    CHECK_THAT(run.ok({"due", "--days", "15"}), says("in 15 days"));
    CHECK_THAT(run.ok({"due", "--days", "0"}), says("nothing is due through 2026-11-25"));
    CHECK(run({"due", "--days", "-1"}).code == 2);
    CHECK(run({"due", "--days", "99999"}).code == 3);
    CHECK_THAT(flat(run.ok({"used", "L1", "GTAW", "--date", "2026-11-02", "--work", "frame 12"})),
               says("holds through 2027-05-02"));
    const Run slip = run({"used", "L1", "GTWA", "--work", "frame 12"});
    CHECK(slip.code == 3); // what would have no effect is not kept
    CHECK_THAT(slip.err, says("holds no qualification in 'GTWA', only in GTAW; did you mean 'GTAW'?"));
    CHECK(run({"used", "L1", "GTAW", "--date", "2026-11-26", "--work", "tomorrow"}).code == 3);
    const Run workless = run({"used", "L1", "GTAW"});
    CHECK(workless.code == 2);
    CHECK_THAT(workless.err, says("which work shows it? give --work"));
    CHECK(run({"trained", "L1", "GTAW"}).code == 2);
    CHECK_THAT(run.ok({"trained", "L1", "GTAW", "--text", "root runs"}),
               says("training of welder L1 in GTAW on 2026-11-25 logged"));
    CHECK_THAT(flat(run.ok({"welder", "L1", "--on", "2027-05-02"})), says("valid"));
    CHECK_THAT(flat(run.ok({"welder", "L1", "--on", "2027-05-03"})),
               says("lapsed, not used within 6 months after 2026-11-02"));
    CHECK_THAT(run({"renew", "L1", "1", "Q-1"}).err, says("is valid, not lapsed"));

    // A slip is taken back, and stays in the history.
    const auto welder = nlohmann::json::parse(run.ok({"welder", "L1", "--json"}));
    REQUIRE(welder["events"].size() == 2);
    CHECK(welder["events"][0]["kind"] == "use");
    const std::string entry = std::to_string(welder["events"][0]["entry"].get<int>());
    CHECK_THAT(run({"retract", "L1", entry}).err, says("give --why"));
    CHECK_THAT(run.ok({"retract", "L1", entry, "--why", "wrong welder"}), says("kept in the history"));
    CHECK(run({"retract", "L1", entry, "--why", "again"}).code == 3);
    CHECK(run({"retract", "L1", "1", "--why", "the welder"}).code == 3);
    CHECK_THAT(run.ok({"history", "L1", "--welder"}), says("use withdrawn"));
    CHECK_THAT(run.ok({"due"}), says("2026-12-10"));

    CHECK_THAT(run.ok({"revoke", "L1", "1", "--why", "same fault three times"}),
               says("revoked as of 2026-11-25"));
    CHECK_THAT(flat(run.ok({"welder", "L1"})), says("as of 2026-11-25"));
    CHECK_THAT(run.ok({"welders"}), says("revoked"));
    CHECK(run({"revoke", "L1", "7", "--why", "slip"}).code == 3);
    CHECK(run({"revoke", "L1", "x", "--why", "slip"}).code == 2);
    CHECK_THAT(run({"revoke", "L1", "1"}).err, says("for which reason? give --why"));
}

TEST_CASE("a lapsed qualification comes back by a coupon; the record shows what it rests on", "[standing]") {
    const Program run;
    run.ok({"enrol", "L1", "--name", "J. Reef"});
    test_coupon(run, "Q-1", "2025-06-10");
    run.ok({"qualify", "Q-1", "--rules", "asme-ix"});
    CHECK_THAT(run.ok({"due"}), says("over for"));
    CHECK_THAT(run.ok({"due"}), says("renew it: 1 coupon"));
    test_coupon(run, "P-1", "2026-11-20", "passed", {{"--purpose", "practice"}});
    CHECK_THAT(run({"renew", "L1", "1", "P-1"}).err, says("was welded for practice"));
    test_coupon(run, "Q-2", "2026-11-20", "passed", {{"--position", "1G"}});
    run.ok({"exam", "Q-2", "RT", "--incomplete", "the film is lost", "--replaces", "3", "--why", "lost"});
    CHECK_THAT(run({"renew", "L1", "1", "Q-2"}).err, says("give --override"));
    CHECK_THAT(flat(run.ok({"renew", "L1", "1", "Q-2", "--override", "the owner saw the film"})),
               says("valid (by override), holds through 2027-05-20"));
    CHECK(run({"renew", "L1", "1", "Q-2"}).code == 3);
    const std::string record = flat(run.ok({"record", "L1", "1"}));
    CHECK_THAT(record, says("Renewed on 2026-11-20"));
    CHECK_THAT(record, says("does not count: the film is lost"));
    CHECK_THAT(record, says("because the owner saw the film"));
    CHECK_THAT(flat(run.ok({"welder", "L1"})), says("because: the owner saw the film"));
    CHECK(run({"renew", "L1", "1"}).code == 2);
}

TEST_CASE("carried in only with a paper, which is given back", "[standing]") {
    const Program run;
    run.ok({"enrol", "L1", "--name", "J. Reef"});
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
    const Run paperless = run(words);
    CHECK(paperless.code == 2);
    CHECK_THAT(paperless.err, says("with its paper: give --document"));
    auto with = words;
    with.insert(with.end(), {"--document", run.file("paper.pdf")});
    CHECK_THAT(run(with).err, says("cannot be read"));
    write_file(run.file("paper.pdf"), "");
    CHECK_THAT(run(with).err, says("a document has 1 byte to 16 MiB"));
    write_file(run.file("paper.pdf"), std::string((std::size_t{16} << 20) + 1, 'x'));
    CHECK_THAT(run(with).err, says("a document has 1 byte to 16 MiB"));
    write_file(run.file("paper.pdf"), std::string("%PDF\0bytes", 10));
    CHECK_THAT(run.ok(with), says("#1 141 by iso-9606-1"));
    CHECK_THAT(run.ok({"record", "L1", "1", "--document", run.file("back.pdf")}), says("paper.pdf written"));
    CHECK(read_file(run.file("back.pdf")) == std::string("%PDF\0bytes", 10));
    CHECK(run({"record", "L1", "1", "--document", run.file("back.pdf")}).code == 3);
    run.ok({"used", "L1", "141", "--date", "2026-05-20", "--work", "line 4"});
    run.ok({"used", "L1", "141", "--date", "2026-11-10", "--work", "line 4"});
    CHECK_THAT(run({"extend", "L1", "1", "--weld", "2026-11-12 RT accepted by A. Field"}).err,
               says("1 given; 2 welds of the last 6 months"));
    CHECK_THAT(
        run({"extend", "L1", "1", "--weld", "2026-11-12 RT accepted by A. Field", "--coupon", "Q-9"}).err,
        says("there is no coupon 'Q-9'"));
    CHECK_THAT(run.ok({"extend", "L1", "1", "--weld", "2026-11-12 RT accepted by A. Field", "--weld",
                       "2026-08-02 RT accepted by A. Field"}),
               says("lasts through 2029-05-25"));
}

TEST_CASE("the qualification record as text, JSON and page says the same, and escapes what people typed",
          "[standing]") {
    const Program run;
    run.ok({"enrol", "L1", "--name", "J. <Reef> (&) \"sons\""});
    test_coupon(run, "Q-1", "2026-10-05", "passed",
                {{"--process", "GTAW 0.05in + SMAW 0.1in"}, {"--filler-group", "F6 + F4"}});
    CHECK_THAT(run.ok({"qualify", "Q-1", "--rules", "asme-ix"}), says("#2 SMAW"));
    const std::string text = flat(run.ok({"record", "L1", "2"}));
    for (const char *part : {"J. <Reef>", "weld thickness", "up to 0.2 in", "F1, F2, F3 and F4",
                             "asme-ix-tests", "SHA-256", "head of the record", "2026-10-05", "level II",
                             "passed for class test coupon", "An aid, not the code"})
        CHECK_THAT(text, says(part));
    const auto json = nlohmann::json::parse(run.ok({"record", "L1", "2", "--json"}));
    CHECK(json["test"]["weld thickness"] == "0.1 in");
    CHECK(json["until"] == "2027-04-05");
    CHECK_THAT(run.ok({"record", "L1", "2", "--html", run.file("r.html")}), says("written to"));
    const std::string page = read_file(run.file("r.html"));
    CHECK_THAT(page, says("J. &lt;Reef&gt; (&amp;) &quot;sons&quot;"));
    CHECK(page.find("<Reef>") == std::string::npos);
    for (const char *part : {"up to 0.2 in", "An aid, not the code", "@page", "for the employer, date",
                             "head of the record", "Examined and graded", "passed for class test coupon"})
        CHECK_THAT(page, says(part));
    CHECK(run({"record", "L1", "2", "--html", run.file("r.html")}).code == 3);
    CHECK(run({"record", "L1", "3"}).code == 3);
}

TEST_CASE("a welder is registered and changed on the command line, and may be called as a coupon is",
          "[standing]") {
    const Program run;
    run.ok({"enrol", "X"});
    run.ok({"register", "X"});
    CHECK(run.ok({"coupons"}).find("X ") != std::string::npos);
    CHECK_THAT(run.ok({"welder", "X"}), says("holds no qualification"));
    const Run again = run({"enrol", "X"});
    CHECK(again.code == 3);
    CHECK_THAT(again.err, says("give --why"));
    CHECK_THAT(run.ok({"enrol", "X", "--name", "A. Buoy", "--why", "name came later"}),
               says("changed; the old entry is kept"));
    CHECK(run({"enrol", "X", "--name", "A. Buoy", "--why", "twice"}).code == 3);
    CHECK(run({"enrol", "X", "--name", "B. Buoy", "--why", ""}).code == 3);
    CHECK_THAT(run.ok({"welder", "X"}), says("A. Buoy"));
    CHECK(run({"enrol", "X Y"}).code == 3);
    CHECK_THAT(run.ok({"welders"}), says("holds no qualification"));
}
