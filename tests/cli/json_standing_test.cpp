// Every command about welders and qualifications prints JSON as its schema says, with what its text says.
#include "catch.hpp"

#include "cli/json.hpp"
#include "cli/schema.hpp"
#include "test_coupon.hpp"

using namespace beadbook::test;

TEST_CASE("JSON of welders and qualifications is as its schemas say", "[standing]") {
    const Program run;
    auto welder = json(run, {"enrol", "L1", "--name", "J. Reef"});
    CHECK(welder["mark"] == "L1");
    CHECK(json(run, {"enrol", "L1", "--note", "left-handed", "--why", "it came later"})["welder"]["note"] ==
          "left-handed");
    CHECK(json(run, {"welder", "L1"})["qualifications"].empty());
    CHECK(json(run, {"due"}).empty());
    test_coupon(run, "Q-1", "2025-06-10");
    test_coupon(run, "Q-2", "2025-06-11", "failed", {{"--position", "2G"}, {"--process", "SMAW"}});
    test_coupon(run, "Q-3", "2025-06-12", "passed", {{"--position", "2G"}, {"--process", "SMAW"}});
    CHECK(json(run, {"qualify", "Q-1", "--rules", "asme-ix"})["qualifications"][0]["state"] == "lapsed");
    const auto second =
        json(run, {"qualify", "Q-3", "--rules", "asme-ix", "--override", "shown to the owner"});
    CHECK(second["qualifications"][0]["override"] == "shown to the owner");
    CHECK(second["qualifications"][0]["overridden"].size() == 1);
    const auto again = json(run, {"qualify", "Q-1", "--rules", "mil-std-1595a", "--override", "not needed"});
    CHECK(again["notes"].size() == 1);

    const auto due = json(run, {"due"});
    REQUIRE(due.size() == 3);
    CHECK(due[0]["act"] == "renew");
    CHECK(due[0]["to do"] == "renew it: 1 coupon");
    CHECK(due[0]["coupons"] == 1);
    CHECK(due[0]["days left"] < 0);

    test_coupon(run, "Q-4", "2026-11-20", "passed", {{"--position", "1G"}});
    const auto renewed = json(run, {"renew", "L1", "1", "Q-4"});
    CHECK(renewed["event"]["evidence"][0]["coupon"] == "Q-4");
    CHECK(renewed["event"]["evidence"][0]["exams"].size() == 3);
    CHECK(renewed["qualification"]["until"] == "2027-05-20");
    CHECK(json(run, {"used", "L1", "GTAW", "--work", "frame 12"})["qualifications"].size() == 2);
    CHECK(run({"used", "L1", "GTWA", "--work", "frame 12"}).code == 3);
    CHECK(second["qualifications"][0]["number"] == 2);
    CHECK(json(run, {"trained", "L1", "SMAW", "--text", "root runs"})["event"]["kind"] == "training");
    CHECK(json(run, {"revoke", "L1", "2", "--why", "doubt"})["qualification"]["state"] == "revoked");

    write_file(run.file("paper.pdf"), "paper");
    const auto carried = json(run, {"carry", "L1", "--rules", "iso-9606-1", "--way", "b", "--document",
                                    run.file("paper.pdf"), "--welded", "2026-07-01", "--process", "141",
                                    "--joint", "groove", "--units", "mm", "--weld-thickness", "4"});
    CHECK(carried["qualifications"][0]["document"].get<std::string>().size() == 64);
    CHECK(carried["qualifications"][0]["ends"] == "2028-07-01");
    CHECK(json(run, {"extend", "L1", "4", "--weld", "2026-11-12 RT accepted by A. Field", "--weld",
                     "2026-08-02 RT accepted by A. Field"})["qualification"]["ends"] == "2029-05-25");

    run.ok({"grade", "Q-4", "failed", "--remark", "the film was read again"});
    welder = json(run, {"welder", "L1"});
    CHECK(welder["events"].size() == 5);
    CHECK(welder["events"][0]["counts no more"] == "coupon Q-4 was graded failed on 2026-11-25");
    CHECK(welder["on"] == "2026-11-25");
    CHECK(json(run, {"welders"})[0]["qualifications"].size() == 4);
    const auto record = json(run, {"record", "L1", "1"});
    CHECK(record["events"].size() == 2);
    CHECK(record["qualification"]["range"].size() == record["range"].size());
    CHECK(record["range"][0]["parts"][0].contains("clause"));
    CHECK(json(run, {"record", "L1", "2"})["qualification"]["evidence"]["retest after"] ==
          "coupon Q-2 failed on 2025-06-11");
    json(run, {"record", "L1", "4"});
    CHECK(json(run, {"record", "L1", "4", "--document", run.file("back.pdf")})["what"] == "paper.pdf");
    CHECK(json(run, {"record", "L1", "4", "--html", run.file("page.html")})["written"] ==
          run.file("page.html"));
    const auto entry = welder["events"][0]["entry"].get<int>();
    CHECK(json(run, {"retract", "L1", std::to_string(entry), "--why", "graded failed"})["kind"] == "renewal");
}

TEST_CASE("the schemas notice a key that is missing, and one that they do not know", "[standing]") {
    const Program run;
    auto welder = json(run, {"enrol", "L1", "--name", "J. Reef"});
    welder["nickname"] = "Jo";
    CHECK(schema_faults("enrol", welder.dump()) != "");
    welder.erase("nickname");
    welder.erase("mark");
    CHECK(schema_faults("enrol", welder.dump()) != "");
    test_coupon(run, "Q-1", "2026-10-05");
    auto granted = json(run, {"qualify", "Q-1", "--rules", "asme-ix"});
    granted["qualifications"][0].erase("state");
    CHECK(schema_faults("qualify", granted.dump()) != "");
}

TEST_CASE("JSON of many that are qualified, and of what is asked after a failed test, is as its schemas say",
          "[standing]") {
    const Program run;
    for (const char *mark : {"L1", "L2"})
        run.ok({"enrol", mark, "--name", mark == std::string("L1") ? "J. Reef" : "S. Keel"});
    test_coupon(run, "Q-1", "2026-11-10");
    test_coupon(run, "Q-2", "2026-11-10", "failed", {{"--welder", "L2"}});
    const auto done =
        json(run, {"qualify", "--all", "--for-criteria", "asme-ix-tests", "--rules", "asme-ix"}, 1);
    CHECK(done["qualified"][0]["coupon"] == "Q-1");
    CHECK(done["qualified"][0]["qualifications"][0]["number"] == 1);
    CHECK(done["lacking"][0]["welder"] == "L2");
    CHECK(done["left out"].empty());
    CHECK(json(run, {"qualify", "Q-1,Q-2", "--rules", "asme-ix"}, 1)["left out"][0]["coupon"] == "Q-1");
    const auto next = json(run, {"welder", "L2"})["failed"][0]["next"];
    CHECK(next[0]["rules"] == "asme-ix");
    CHECK(next[0]["coupons"] == 2);
    CHECK(next[0]["coupons after training"] == 1);
    CHECK(json(run, {"learner", "L2"})["coupons"][0]["next"] == next);
    // What is welded otherwise is no retest of it, however it comes out.
    test_coupon(run, "Q-3", "2026-11-12", "passed",
                {{"--welder", "L2"}, {"--backing", "with"}, {"--filler-group", "F4"}});
    const auto after = json(run, {"welder", "L2"})["failed"][0]["next"];
    CHECK(after[0]["coupons"] == 2);
    REQUIRE(after[0]["no retest"].size() == 1);
    CHECK(after[0]["no retest"][0]["coupon"] == "Q-3");
    CHECK(after[0]["no retest"][0]["otherwise"] ==
          std::vector<std::string>{"backing with, not without", "filler group F4, not F6"});
    run.ok({"change", "Q-2", "--welder", "L1", "--why", "the marks were swapped"});
    const auto said = json(run, {"learner", "L2"})["said of another"];
    REQUIRE(said.size() == 1);
    CHECK(said[0]["coupon"] == "Q-2");
    CHECK(said[0]["welder"] == "L1");
    CHECK_THAT(run.ok({"learner", "L2"}), says("Coupon Q-2 failed as a test of this welder"));
}
