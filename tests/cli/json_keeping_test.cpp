// The JSON of verify, backup, export and import is as its schema says.
#include "catch.hpp"
#include "records/behind.hpp"
#include "run.hpp"
#include "schema.hpp"

#include <nlohmann/json.hpp>

using namespace beadbook::test;
using Json = nlohmann::json;

namespace {

/// A coupon with every kind of thing that an export holds.
void full_coupon(const Program &run) {
    run.ok({"register", "T-1", "--criteria", "ufgs-15216n", "--thickness", "0.150in", "--weld-length", "8in",
            "--temperature", "-40 F", "--layers", "2", "--process", "GTAW", "--note", "x"});
    run.ok(
        {"exam", "T-1", "RT", "--examiner", "A. Field", "--level", "II", "--procedure", "p", "--note", "n"});
    run.ok({"log", "T-1", "gas pore 0.055 at 2 # remark", "undercut l 3/8 d 0.01 mid 3 smooth face",
            "slag from 2 to 2.4 across left 0.1", "angular misalignment angle 2 deg",
            "porosity area 0.01 in2 at 1", "--sure"});
    run.ok({"exam", "T-1", "VT", "--practice", "asme-v-vt", "--condition", "light=50 fc", "--incomplete",
            "root not reached"});
    run({"judge", "T-1"});
}

} // namespace

TEST_CASE("the JSON of keeping the record is as its schemas say") {
    const Program run, other;
    full_coupon(run);
    for (const auto &words :
         std::vector<std::vector<std::string>>{{"verify", "--json"}, {"verify", "--replay", "--json"}}) {
        const std::string out = run.ok(words);
        CHECK(schema_faults("verify", out).empty());
        CHECK(Json::parse(out)["holds"] == true);
    }
    const std::string backup = run.ok({"backup", run.file("copy.db"), "--json"});
    CHECK(schema_faults("backup", backup).empty());
    CHECK(Json::parse(backup)["entries"] == Json::parse(run.ok({"verify", "--json"}))["entries"]);
    const std::string seal =
        run.ok({"seal", run.file("a.seal"), "--key", run.file("k.pem"), "--new-key", "--json"});
    CHECK(schema_faults("seal", seal).empty());
    const std::string key = Json::parse(seal)["public key"];
    const std::string sealed = run.ok({"verify", "--seal", run.file("a.seal"), "--signer", key, "--json"});
    CHECK(schema_faults("verify", sealed).empty());
    CHECK(Json::parse(sealed)["seal"]["state"] == "holds");
    const std::string exported = run.ok({"export", "json"});
    CHECK(schema_faults("export", exported).empty());
    CHECK(Json::parse(exported)["coupons"][0]["exams"][0]["indications"].size() == 5);
    const std::string written = run.ok({"export", "json", "--output", run.file("all.json"), "--json"});
    CHECK(schema_faults("export", written).empty());
    CHECK(Json::parse(written)["coupons"] == 1);
    const Run imported = other({"import", "json", "--json"}, exported);
    CHECK(imported.code == 0);
    CHECK(schema_faults("import", imported.out).empty());
    const Json taken = Json::parse(imported.out);
    CHECK(taken["exams"] == 2);
    CHECK(taken["indications"] == 5);
    REQUIRE(taken["notes"].size() == 4); // the record is new; slag, by GTAW; two exams are open
}

TEST_CASE("the faults of a replay stand in the JSON by kind and by number") {
    const Program run;
    full_coupon(run);
    // The criteria of the stored verdict are taken away: the chain holds, the verdict cannot be taken again.
    behind(run.book(), "DELETE FROM criteria WHERE name = 'ufgs-15216n'");
    const Run verified = run({"verify", "--replay", "--json", "--head", std::string(64, 'b')});
    CHECK(verified.code == 4);
    CHECK(schema_faults("verify", verified.out).empty());
    const Json out = Json::parse(verified.out);
    CHECK(out["holds"] == false);
    CHECK(out["faults"].size() == 2);
    CHECK(out["head given"] == std::string(64, 'b'));
    REQUIRE(out["not the same"].size() == 1);
    CHECK(out["not the same"][0]["kind"] == "text missing");
    CHECK(out["not the same"][0]["coupon"] == "T-1");
    CHECK(out["not the same"][0]["entry"].get<int>() > 0);
    CHECK(out["not the same"][0]["sentence"] == out["faults"][0]);
}

TEST_CASE("the schema of the exchange format refuses what import refuses") {
    const Program run;
    const Json good = Json::parse(R"({"format": "beadbook exchange", "version": 1, "coupons": [{"id": "N",
        "fields": {"thickness": "1 in"}, "exams": [{"method": "VT", "date": "2026-11-20", "indications":
        [{"type": "crack", "length": {"typed": "1 in", "nm": 25400000}}]}]}]})");
    REQUIRE(schema_faults("export", good.dump()).empty());
    const auto exam = Json::json_pointer("/coupons/0/exams/0"), find = exam / "indications" / 0;
    const std::vector<std::function<void(Json &)>> breaks{
        [](Json &j) { j["version"] = "1"; },
        [](Json &j) { j["more"] = 1; },
        [](Json &j) { j["coupons"][0].erase("id"); },
        [](Json &j) { j["coupons"][0]["id"] = "a b"; },
        [](Json &j) { j["coupons"][0]["exam"] = Json::array(); },
        [](Json &j) { j["coupons"][0]["fields"]["thickness"] = 1; },
        [](Json &j) { j["coupons"][0]["fields"]["thicknes"] = "1 in"; },
        [&](Json &j) { j[exam]["method"] = "by eye"; },
        [&](Json &j) { j[exam]["number"] = 0; },
        [&](Json &j) {
            j[exam]["conditions"] = {{"light", 1000}};
        },
        [&](Json &j) { j[exam]["indication"] = Json::array(); },
        [&](Json &j) { j[find].erase("type"); },
        [&](Json &j) { j[find]["length"]["mm"] = 25; },
        [&](Json &j) { j[find]["left"] = "yes"; },
        [&](Json &j) { j[find]["at"] = 1; },
    };
    for (const auto &break_it : breaks) {
        Json broken = good;
        break_it(broken);
        INFO(broken.dump());
        CHECK_FALSE(schema_faults("export", broken.dump()).empty());
        CHECK(run({"import", "json"}, broken.dump()).code == 3);
    }
    CHECK(run({"import", "json"}, good.dump()).code == 0);
}
