// Every command about coupons, exams and verdicts prints JSON as its schema says, with what its text says.
#include "catch.hpp"
#include "cli/deeds.hpp"
#include "cli/json.hpp"
#include "cli/schema.hpp"
#include "terminal/command.hpp"

#include <algorithm>

using namespace beadbook::test;

namespace {

/// A coupon with every kind of field.
nlohmann::json registered(const Program &run) {
    return json(run, {"register",      "T-1",   "--criteria",  "mil-hdbk-1890-table-3",
                      "--class",       "2",     "--joint",     "groove",
                      "--form",        "tube",  "--seam",      "girth",
                      "--diameter",    "2.5in", "--thickness", "0.150in",
                      "--weld-length", "8in",   "--magnetic",  "yes",
                      "--process",     "SMAW",  "--welder",    "L1",
                      "--temperature", "350 F", "--layers",    "3",
                      "--also",        "PT",    "--welded",    "2026-11-20",
                      "--units",       "in",    "--material",  "carbon steel"});
}

std::vector<std::string> exam(const std::string &method, const std::vector<std::string> &more = {}) {
    std::vector<std::string> out{"exam", "T-1", method, "--examiner", "A. Field", "--level", "II"};
    out.insert(out.end(), more.begin(), more.end());
    return out;
}

/// VT by a practice in dim light, MT and PT that found nothing, RT that is open.
void examined(const Program &run) {
    run.ok(exam("VT", {"--practice", "asme-v-vt", "--condition", "light=60 fc", "--found", "none"}));
    run.ok(exam("MT", {"--found", "none"}));
    run.ok(exam("PT", {"--found", "none"}));
    run.ok(exam("RT"));
}

} // namespace

TEST_CASE("JSON of coupons is as its schemas say") {
    const Program run;
    CHECK(json(run, {"register", "T-0"})["fields"].empty());
    const auto coupon = registered(run);
    CHECK(coupon["id"] == "T-1");
    CHECK(coupon["fields"]["thickness"]["nm"] == 3'810'000);
    CHECK(coupon["fields"]["thickness"]["typed"] == "0.150in");
    CHECK(coupon["fields"]["class"] == "2");
    CHECK(json(run, {"change", "T-1", "--note", "bent", "--why", "seen"})["fields"]["note"] == "bent");
    const auto remark = json(run, {"remark", "T-1", "restart looks cold"});
    CHECK(remark["text"] == "restart looks cold");
    CHECK(remark["by"] == "tester");
    const auto list = json(run, {"coupons"});
    REQUIRE(list.size() == 2);
    CHECK(list[0]["verdict"] == "no criteria");
    CHECK(list[1]["verdict"] == "cannot say");
    CHECK(list[1]["grade"] == "");
    CHECK(json(run, {"coupons", "--welder", "L1"}).size() == 1);
    CHECK(json(run, {"coupons", "--welder", "L9"}).empty());
    CHECK(json(run, {"show", "T-0"})["exams"].empty());
    CHECK(json(run, {"history", "T-1"}).size() == 3);
}

TEST_CASE("JSON of exams and finds is as its schemas say") {
    const Program run;
    registered(run);
    const auto vt =
        json(run, exam("VT", {"--practice", "asme-v-vt", "--condition", "light=60 fc", "--condition",
                              "ligth=1", "--procedure", "VT-1", "--note", "cold", "--found", "none"}));
    CHECK(vt["coupon"] == "T-1");
    CHECK(vt["number"] == 1);
    CHECK(vt["found"] == 0);
    CHECK(vt["finished by"] == "tester");
    CHECK(vt["conditions"]["light"] == "60 fc");
    CHECK_THAT(vt["not valid"].get<std::string>(), says("at least 100 fc or 1076 lx is asked"));
    REQUIRE(vt["notes"].size() == 1);
    CHECK_THAT(vt["notes"][0].get<std::string>(), says("did you mean 'light'?"));
    const auto rt = json(run, exam("RT", {"--incomplete", "film 2 is fogged"}));
    CHECK(rt["incomplete"] == "film 2 is fogged");
    CHECK_FALSE(rt.contains("found"));
    CHECK(json(run, exam("RT", {"--replaces", "2", "--why", "slip"}))["number"] == 2);

    const auto logged = json(run, {"log", "T-1", "tungsten inclusion 0.05 at 2 in # bright",
                                   "undercut l 3/8 at 1-1/2 smooth face",
                                   "slag from 2 in to 2.4 across left 0.1", "pore 0.1 mid 5 in",
                                   "pore area 0.01 in2 at 6 in", "linear misalignment h 0.02 at 7 in root"});
    CHECK(logged["coupon"] == "T-1");
    CHECK(logged["exam"] == 2);
    REQUIRE(logged["indications"].size() == 6);
    CHECK(logged["indications"][0]["size"]["nm"] == 1'270'000);
    CHECK(logged["indications"][2]["left"] == true);
    CHECK(logged["indications"][3]["line"] == "gas pore size 0.1 in mid 5 in");
    REQUIRE(logged["notes"].size() == 2);
    CHECK_THAT(logged["notes"][1].get<std::string>(), says("reads the area of gas pore"));
    CHECK(json(run, {"correct", "T-1", "1", "gas pore 0.05 at 2 in", "--why", "slip"})["corrected"] == 1);
    CHECK(json(run, {"correct", "T-1", "1", "tungsten inclusion 0.05 at 2 in", "--why", "slip"})["notes"]
              .size() == 1);
    CHECK(json(run, {"withdraw", "T-1", "indication", "3", "--why", "gone"})["withdrawn"] == "indication");
    CHECK(json(run, {"finish", "T-1", "--found", "5"})["found"] == 5);
    CHECK_FALSE(json(run, {"reopen", "T-1", "2", "--why", "one more look"}).contains("found"));
    const auto more = json(run, {"log", "T-1", "pore 0.02 at 7 in", "--finish"});
    CHECK(more["finished"]["found"] == 6);
    CHECK(json(run, {"withdraw", "T-1", "exam", "1", "--why", "dim"})["number"] == 1);
    json(run, exam("MT"));
    run.ok({"exam", "T-1", "PT"}); // by nobody
    const auto all = json(run, {"finish", "--every-open", "--why", "an old record"});
    CHECK(all["finished"] == 0); // nothing shows that it is old
    CHECK(all["notes"].size() == 2);

    const auto shown = json(run, {"show", "T-1"});
    REQUIRE(shown["exams"].size() == 3);
    CHECK(shown["exams"][0]["indications"].size() == 6);
    CHECK_THAT(shown["exams"][2]["does not count"].get<std::string>(), says("it is not finished"));
    CHECK(json(run, {"finish", "T-1", "3", "--found", "none"})["found"] == 0);
    const auto history = json(run, {"history", "T-1"});
    REQUIRE(history.back().contains("supersedes"));
    CHECK(history.back()["reason"] == "finished with 0 found");
    CHECK(std::any_of(history.begin(), history.end(), [](const auto &one) {
        return one["kind"] == "indication" && one["body"].contains("withdrawn") && one["number"] == 3;
    }));
}

TEST_CASE("JSON of photos is as its schemas say, wherever they stand") {
    const Program run;
    registered(run);
    write_file(run.file("a.jpg"), "\xff\xd8\xff a");
    write_file(run.file("b.png"), "\x89PNG\r\n\x1a\n b");
    run.ok(exam("VT", {}));
    run.ok({"log", "T-1", "undercut l 0.1 d 0.01 at 2 in", "--finish"});
    const auto photo = json(run, {"photo", "T-1", run.file("a.jpg"), "--find", "1", "--remark", "cleaned"});
    CHECK(photo["number"] == 1);
    CHECK(photo["find"] == 1);
    CHECK(photo["by"] == "tester");
    run.ok({"photo", "T-1", run.file("b.png")});
    CHECK(json(run, {"withdraw", "T-1", "photo", "2", "--why", "blurred"})["withdrawn"] == "photo");
    const auto photos = json(run, {"photos", "T-1"})["photos"];
    REQUIRE(photos.size() == 2);
    CHECK(photos[0]["remark"] == "cleaned");
    CHECK(photos[1]["withdrawn"] == "blurred");
    CHECK(json(run, {"show", "T-1"})["photos"] == photos);
    CHECK(json(run, {"history", "T-1"}).back()["kind"] == "photo");
    const auto written = json(run, {"photos", "T-1", "1", "--out", run.file("out.jpg")});
    CHECK(written["written to"] == run.file("out.jpg"));
    CHECK(read_file(run.file("out.jpg")) == "\xff\xd8\xff a");
    CHECK(run({"photos", "T-1", "1", "--out", run.file("out.jpg")}).code == 3); // nothing is overwritten
    const Run exported = run({"export", "json"});
    CHECK(schema_faults("export", exported.out) == "");
    CHECK_THAT(exported.err, says("1 photo is named by hash"));
}

TEST_CASE("with --json nothing but JSON is printed, also where somebody is asked or types lines") {
    const Program run;
    registered(run);
    auto words = exam("VT", {"--practice", "asme-v-vt", "--ask", "--json"});
    const Run asked = run(words, "20 in\n\n\n\n\n\n\n\n\n");
    REQUIRE(asked.code == 0);
    CHECK(schema_faults("exam", asked.out) == "");
    CHECK_THAT(asked.err, says("distance (from the eye to the surface): "));
    const Run typed = run({"log", "T-1", "--json"}, "pore 0.04 at 1 in\npore 0.05 at 2 in\n", true);
    REQUIRE(typed.code == 0);
    CHECK(schema_faults("log", typed.out) == "");
    CHECK(nlohmann::json::parse(typed.out)["indications"].size() == 2);
}

TEST_CASE("JSON of verdicts and grades is as its schemas say") {
    const Program run;
    registered(run);
    run.ok({"change", "T-1", "--forget", "also", "--why", "not called for"});
    examined(run);
    run.ok({"log", "T-1", "gas pore 0.055 at 2 in", "gas pore 0.09 at 4 in", "undercut l 0.2 at 5 in",
            "crack l 0.1 at 6 in", "pore at 7 in"});
    const auto open = json(run, {"judge", "T-1"}, 1);
    CHECK(open["class"] == "2");
    run.ok({"finish", "T-1", "--as-logged"});
    const auto judged = json(run, {"judge", "T-1", "--class", "3"}, 1);
    CHECK(judged["criteria"]["set"] == "mil-hdbk-1890-table-3");
    REQUIRE(judged["classes"].size() == 3);
    CHECK(judged["verdict"] == "reject");
    std::vector<std::string> kinds;
    for (const auto &one : judged["classes"][1]["findings"]) kinds.push_back(one["kind"]);
    for (const char *kind : {"not allowed", "out of limit", "exam missing", "missing data"})
        CHECK(std::count(kinds.begin(), kinds.end(), kind) > 0);
    for (const auto &one : judged["classes"][1]["findings"]) {
        if (one["kind"] != "out of limit") continue;
        CHECK(one["effect"] == "reject");
        CHECK(one["measured"]["exact"].is_string());
        CHECK(one["ratio"] > 1);
        CHECK(one["standing"] == "read");
        CHECK_FALSE(one["indications"].empty());
    }
    for (const char *set : {"iso-5817", "ufgs-15216n", "mil-std-2219a", "cfr-46-56.70-15"})
        CHECK(schema_faults("judge", run({"judge", "T-1", "--criteria", set, "--json"}).out) == "");

    run.ok({"register", "T-2"});
    const auto all = json(run, {"judge", "--all"}, 1);
    REQUIRE(all.size() == 2);
    CHECK(all[0]["verdict"] == "reject");
    CHECK(all[1]["not judged"] == "coupon T-2 names no criteria");
    CHECK(json(run, {"judge", "--all", "--no-record"}, 1) == all);

    const auto grade = json(run, {"grade", "T-1", "passed", "--remark", "ground flush"});
    CHECK(grade["decision"] == "passed");
    CHECK(grade["verdict"] == "reject");
    CHECK(grade["against verdict"] == true);
    run.ok({"remark", "T-1", "shorter arc"});
    auto why = json(run, {"why", "T-1"}, 1);
    CHECK(why["welder"] == "L1");
    CHECK(why["grade"]["remark"] == "ground flush");
    CHECK(why["remarks"][0]["text"] == "shorter arc");
    CHECK(why["causes"]["crack"]["cause"].is_string());
    CHECK_FALSE(why["grade"].contains("to be graded again"));
    CHECK(json(run, {"coupons"})[0]["grade"] == "passed (against the verdict)");

    // What changes the verdict is told wherever the grade is.
    for (const char *number : {"2", "4", "5"})
        run.ok({"withdraw", "T-1", "indication", number, "--why", "ground"});
    run.ok({"reopen", "T-1", "4", "--why", "examined again"});
    run.ok({"finish", "T-1", "--as-logged"});
    const std::string again =
        "the verdict for class 2 was 'reject' when it was given and is 'cannot say' now";
    CHECK(json(run, {"coupons"})[0]["to be graded again"] == again);
    const auto shown = json(run, {"show", "T-1"});
    CHECK(shown["grade"]["to be graded again"] == again);
    CHECK(shown["verdicts"].size() == 7);
    CHECK(shown["remarks"].size() == 1);
    why = json(run, {"why", "T-1"}, 5);
    CHECK(why["grade"]["to be graded again"] == again);
    const auto history = json(run, {"history", "T-1"});
    for (const char *kind : {"coupon", "exam", "indication", "verdict", "grade", "remark"})
        CHECK(std::any_of(history.begin(), history.end(),
                          [&](const auto &one) { return one["kind"] == kind; }));
}

TEST_CASE("a finding tells its numbers exactly") {
    const Program run;
    run.ok({"register", "T-1", "--criteria", "mil-hdbk-1890-table-3", "--joint", "groove", "--thickness",
            "0.150in", "--weld-length", "8in", "--magnetic", "yes", "--material", "steel", "--process",
            "GTAW"});
    run.ok(exam("RT"));
    run.ok({"log", "T-1", "gas pore 0.055 at 2 in", "crack l 0.1 at 3 in", "--finish"});
    const auto judged = json(run, {"judge", "T-1"}, 1);
    CHECK_FALSE(judged.contains("class"));
    CHECK(judged["classes"][0]["verdict"] == "reject");
    const auto &finding = judged["classes"][0]["findings"][1];
    CHECK(finding["rule"] == "pore-size");
    CHECK(finding["measured"]["exact"] == "1397000");
    CHECK(finding["limit"]["exact"] == "1270000");
    CHECK(finding["margin"]["exact"] == "-127000");
    CHECK(finding["standing"] == "read");
    CHECK(finding["indications"] == std::vector<int>{1});
    CHECK(finding["place"]["from nm"] == 50'800'000);
}

TEST_CASE("what a rule says in plain words is told as JSON too") {
    const Program run;
    run.ok({"register", "T-1", "--criteria", "ufgs-15216n", "--weld-thickness", "0.2in"});
    run.ok(exam("VT"));
    run.ok({"log", "T-1", "crack l 0.1", "--finish"});
    const auto why = json(run, {"why", "T-1"}, 1);
    CHECK(why["class"] == "pressure piping");
    CHECK(why["classes"][0]["findings"][0]["says"] == "A crack is never accepted.");
    CHECK_THAT(run({"why", "T-1"}).out, says("A crack is never accepted."));
}

TEST_CASE("the history of a welder is as its schema says") {
    const Program run;
    run.ok({"enrol", "L1", "--name", "J. Reef"});
    run.ok({"trained", "L1", "SMAW", "--text", "root runs"});
    run.ok({"retract", "L1", "2", "--why", "slip"});
    const auto history = json(run, {"history", "L1", "--welder"});
    REQUIRE(history.size() == 3);
    CHECK(history[0]["body"]["name"] == "J. Reef");
    CHECK(history[2]["supersedes"] == 2);
}

TEST_CASE("a schema of the front notices a key that is missing, of another kind, or not described") {
    const Program run;
    registered(run);
    examined(run);
    run.ok({"log", "T-1", "gas pore 0.09 at 4 in"});
    const auto faulty = [&](const std::vector<std::string> &words, auto spoil) {
        auto words_of_json = words;
        words_of_json.push_back("--json");
        auto out = nlohmann::json::parse(run(words_of_json).out);
        REQUIRE(schema_faults(words[0], out.dump()) == "");
        spoil(out);
        return schema_faults(words[0], out.dump()) != "";
    };
    using Json = nlohmann::json;
    CHECK(faulty({"show", "T-1"}, [](Json &j) { j["exams"][0].erase("method"); }));
    CHECK(faulty({"show", "T-1"}, [](Json &j) { j["exams"][3]["indications"][0]["colour"] = "grey"; }));
    CHECK(faulty({"show", "T-1"}, [](Json &j) { j["fields"]["thickness"]["nm"] = "3810000"; }));
    CHECK(faulty({"coupons"}, [](Json &j) { j[0].erase("verdict"); }));
    CHECK(faulty({"history", "T-1"}, [](Json &j) { j[0]["kind"] = "cupon"; }));
    CHECK(faulty({"judge", "T-1"}, [](Json &j) { j["classes"][0]["verdict"] = "passed"; }));
    CHECK(faulty({"judge", "T-1"}, [](Json &j) { j["classes"][0]["findings"][0].erase("sentence"); }));
    CHECK(faulty({"judge", "--all"}, [](Json &j) { j[0]["not judged"] = "why"; }));
    CHECK(faulty({"why", "T-1"}, [](Json &j) { j.erase("class"); }));
}

TEST_CASE("every command has a schema of its JSON, and every key of these is described") {
    const std::string folder = BEADBOOK_SOURCE "/src/render/schemas/";
    for (const auto &command : beadbook::commands()) {
        INFO(command.name());
        CHECK(std::filesystem::exists(folder + command.name() + ".json"));
    }
    const std::function<void(const nlohmann::json &)> described = [&](const nlohmann::json &schema) {
        if (!schema.is_structured()) return;
        if (schema.is_object() && schema.contains("properties"))
            for (const auto &[key, value] : schema["properties"].items()) {
                INFO(key);
                CHECK((value.contains("description") || value.contains("$ref")));
            }
        for (const auto &part : schema) described(part);
    };
    for (const char *name :
         {"register", "change", "remark", "coupons", "show", "history", "exam", "log", "finish", "reopen",
          "correct", "withdraw", "judge", "why", "grade", "parts/coupon"}) {
        const auto schema = nlohmann::json::parse(read_file(folder + name + ".json"));
        INFO(name);
        CHECK(schema["$schema"] == "http://json-schema.org/draft-07/schema#");
        described(schema);
    }
}
