// Every command about people and equipment prints JSON as its schema says.
#include "catch.hpp"
#include "cli/json.hpp"
#include "cli/schema.hpp"

using namespace beadbook::test;

TEST_CASE("JSON of people and equipment is as its schemas say") {
    const Program run;
    const auto first = json(run, {"person", "A. Field", "--role", "technician", "--certificate",
                                  "MT II since 2022-05-01 until 2027-01-01 number 4711 scheme shop",
                                  "--vision", "2026-03-01 J1", "--note", "nights"});
    CHECK(first["certificates"][0]["number"] == "4711");
    CHECK_FALSE(first["certificates"][0].contains("in force"));
    json(run, {"person", "A. Field", "--certificate", "VT I", "--why", "new"});
    const auto shown = json(run, {"person", "a. field", "--on", "2027-01-02"});
    CHECK(shown["certificates"][0]["in force"] == false);
    CHECK(shown["history"].size() == 2);
    CHECK(shown["history"][1]["why"] == "new");
    CHECK(json(run, {"people"}).size() == 1);
    CHECK_THAT(run.ok({"people", "--on", "2027-01-02"}), says("As it stands on 2027-01-02:"));
    json(run, {"equipment", "LM-7", "--kind", "light meter", "--calibration", "2026-05-01 until 2026-12-01",
               "--note", "bench"});
    json(run, {"equipment", "LM-7", "--withdraw", "dropped", "--date", "2026-11-24"});
    CHECK(json(run, {"equipment", "LM-7"})["out of use"]["why"] == "dropped");
    CHECK(json(run, {"equipment"}).size() == 1);
    const auto due = json(run, {"due"});
    REQUIRE(due.size() == 1);
    CHECK(due[0]["person"] == "A. Field");
    CHECK(due[0]["ends"] == "certificate");

    run.ok({"register", "T-1", "--criteria", "mil-hdbk-1890-table-3", "--class", "2"});
    const auto exam = json(run, {"exam", "T-1", "MT", "--examiner", "A. Field", "--equipment", "LM-7",
                                 "--equipment", "Y-1", "--found", "none"});
    CHECK(exam["equipment"][0]["out of use"] == "2026-11-24");
    CHECK(exam["cautions"].size() == 2);
    CHECK(exam["level"] == "II");
    CHECK(json(run, {"show", "T-1"})["exams"][0]["cautions"].size() == 2);
    CHECK(nlohmann::json::parse(run({"valid", "T-1", "--json"}).out)[0]["cautions"].size() == 2);
    const std::string judged = run({"judge", "T-1", "--json"}).out;
    CHECK(schema_faults("judge", judged) == "");
    CHECK(nlohmann::json::parse(judged)["cautions"].size() == 2);
    CHECK_THAT(run({"judge", "T-1"}).out, says("Caution, exam 1 (MT): light meter LM-7: it was withdrawn"));
    const std::string exported = run.ok({"export", "json"});
    CHECK(schema_faults("export", exported) == "");
    CHECK(nlohmann::json::parse(exported)["coupons"][0]["exams"][0]["equipment"].size() == 2);
}

TEST_CASE("words of people and equipment that say nothing are wrong words") {
    const Program run;
    run.ok({"person", "A. Field", "--role", "technician"});
    CHECK(run({"person", "A. Field", "--why", "slip"}).code == 2);
    CHECK(run({"person", "A. Field", "--note", "x", "--why", "slip", "--on", "2026-11-01"}).code == 2);
    CHECK(run({"equipment", "--kind", "yoke"}).code == 2);
    CHECK(run({"equipment", "Y", "--kind", "yoke", "--date", "2026-11-01"}).code == 2);
    CHECK(run({"equipment", "Y"}).code == 3);
    CHECK_THAT(run.ok({"person", "A. Field"}), says("holds no certificate") && says("History"));
}
