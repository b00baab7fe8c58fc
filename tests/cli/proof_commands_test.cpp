#include "catch.hpp"
#include "run.hpp"
#include "schema.hpp"
#include "test_coupon.hpp"

#include <nlohmann/json.hpp>

using namespace beadbook;
using namespace beadbook::test;

namespace {} // namespace

TEST_CASE("judge and why print what proves an accept, in full on demand and always as JSON", "[proof]") {
    const Program run;
    run.ok({"enrol", "L1", "--name", "J. Reef"});
    test_coupon(run, "Q-1", "2026-10-05", "passed",
                {{"--criteria", "mil-hdbk-1890-table-3"}, {"--class", "3"}});
    run.ok({"exam", "Q-1", "PT", "--date", "2026-10-05", "--examiner", "A. Field", "--level", "II", "--found",
            "none"});
    for (const char *command : {"judge", "why"}) {
        const std::string brief = flat(run.ok({command, "Q-1"}));
        CHECK_THAT(brief, says("What proves class 3"));
        CHECK_THAT(brief, says("Examined: VT 2026-10-05 by A. Field, level II as typed, nobody on record "
                               "vouches for it, none found"));
        CHECK_THAT(brief, says("Nothing was found"));
        CHECK_THAT(brief, says("5 clauses behind it"));
        CHECK_THAT(brief, !says("Examinations that count"));
        const std::string whole = flat(run.ok({command, "Q-1", "--proof"}));
        CHECK_THAT(whole, says("Examinations that count"));
        CHECK_THAT(whole,
                   says("none found, finished by tester on 2026-11-25, by no named practice [it counts, "
                        "though nothing asks for it]"));
        CHECK_THAT(brief,
                   says("none found, finished by tester on 2026-11-25, by no named practice, not asked for"));
        CHECK_THAT(brief, says("so that the accept does not speak of it: Tables I (visual) and II"));
        CHECK_THAT(whole, says("Facts of the coupon that it rests on"));
        const auto json = nlohmann::json::parse(run.ok({command, "Q-1", "--json"}));
        const auto &proof = json.at("classes").back().at("proof");
        CHECK(proof.at("exams").at(0).at("examiner") == "A. Field");
        CHECK(proof.at("exams").back().at("asked by") == "nothing");
        CHECK(proof.at("facts").at("magnetic") == "yes");
        CHECK(schema_faults(command, json.dump()).empty());
    }
    CHECK_THAT(flat(run.ok({"why", "Q-1"})), says("welded by L1, J. Reef"));
    CHECK(run({"judge", "--all", "--proof"}).code == 2);
    CHECK_THAT(run.ok({"verify", "--replay"}), says("all the same"));
}

TEST_CASE("what is not accepted has no proof to print", "[proof]") {
    const Program run;
    run.ok({"register", "T-1", "--criteria", "mil-hdbk-1890-table-3", "--class", "2"});
    const Run done = run({"judge", "T-1", "--proof"});
    CHECK(done.code == 5);
    CHECK_THAT(done.out, !says("What proves"));
}

TEST_CASE("what rejects a class comes first, also where it was said of another class", "[proof]") {
    const Program run;
    run.ok({"register", "T-1", "--criteria", "iso-5817", "--joint", "groove", "--thickness", "6mm",
            "--material", "steel", "--process", "GTAW"});
    run.ok({"exam", "T-1", "VT", "--examiner", "A. Field", "--level", "II"});
    run.ok({"log", "T-1", "crack l 3 at 10", "crack l 4 at 40"});
    const std::string out = flat(run({"judge", "T-1"}).out);
    const std::string second = out.substr(out.find("Class C: reject"));
    CHECK_THAT(second, says("Class C: reject - rejected by ") && says(" that were said above: of #1 and #2"));
}

TEST_CASE("a reason that several classes share is said once, with its classes", "[proof]") {
    const Program run;
    run.ok({"register", "T-1", "--criteria", "mil-hdbk-1890-table-3", "--class", "2", "--joint", "groove",
            "--thickness", "0.15in", "--magnetic", "yes", "--material", "steel", "--process", "GTAW"});
    const std::string out = flat(run({"judge", "T-1"}).out);
    const std::string reason = "No VT that counts is on record";
    const auto first = out.find(reason);
    REQUIRE(first != std::string::npos);
    CHECK(out.find(reason, first + 1) == std::string::npos);
    CHECK_THAT(out, says("No VT that counts is on record. So for the classes 1, 2 and 3."));
    CHECK_THAT(out, says("Class 3: cannot say - and 3 reasons that were said above"));
}

TEST_CASE("why names the finds that are not relevant, and the clause that leaves them out", "[proof]") {
    const Program run;
    run.ok({"register", "T-1", "--criteria", "ufgs-15216n", "--joint", "groove", "--material", "steel",
            "--weld-thickness", "0.5in", "--weld-length", "8in"});
    run.ok({"exam", "T-1", "VT", "--examiner", "A. Field", "--level", "II", "--found", "none"});
    run.ok({"exam", "T-1", "PT", "--examiner", "A. Field", "--level", "II"});
    run.ok({"log", "T-1", "gas pore 0.05in at 1in", "--finish"});
    const std::string why = flat(run.ok({"why", "T-1"}));
    CHECK_THAT(why, says("Not relevant, so that no rule looks at it"));
    CHECK_THAT(why, says("#1 gas pore (PT) from 1 in to 1.05 in: size at most 1/16 in [3.5.3, read"));
    CHECK_THAT(why, says("1 not relevant by 3.5.3"));
    // The verdict is said once.
    CHECK_THAT(why, !says("It meets the class"));
    CHECK_THAT(why, says("It meets what this set asks."));
}

TEST_CASE("a withdrawn coupon that is judged says why nothing is said", "[proof]") {
    const Program run;
    run.ok({"register", "T-1", "--criteria", "ufgs-15216n", "--joint", "groove"});
    run.ok({"withdraw", "T-1", "coupon", "--why", "it was lost"});
    CHECK_THAT(run({"judge", "T-1"}).out, says("- a coupon that is withdrawn is not judged"));
    CHECK_THAT(run({"judge", "--all"}).out, says("withdrawn: it was lost"));
}

TEST_CASE("another unit of a coupon tells what becomes of the numbers before", "[proof]") {
    const Program run;
    run.ok({"register", "T-1", "--units", "in", "--thickness", "0.2"});
    const Run done = run({"change", "T-1", "--units", "mm", "--why", "metric drawing"});
    CHECK(done.code == 0);
    CHECK_THAT(done.out + done.err, says("a bare number is taken in mm from now on"));
    CHECK_THAT(run.ok({"show", "T-1"}), says("0.2 in"));
    const Run other = run({"change", "T-1", "--thickness", "3", "--why", "measured again"});
    CHECK_THAT(other.out + other.err, !says("a bare number"));
}

TEST_CASE("what leaves something open beside a reject stands apart from what rejects", "[proof]") {
    const Program run;
    run.ok({"register",      "T-1",    "--criteria",       "ufgs-15216n",
            "--joint",       "groove", "--form",           "plate",
            "--thickness",   "0.25in", "--weld-thickness", "full",
            "--weld-length", "8in",    "--magnetic",       "no",
            "--process",     "GTAW",   "--material",       "stainless steel"});
    run.ok({"exam", "T-1", "VT", "--examiner", "A. Field", "--level", "II"});
    run.ok({"log", "T-1", "crack 0.1 in at 4 in", "overlap 0.2 in at 6 in", "--finish"});
    const std::string why = flat(run({"why", "T-1"}).out);
    const auto rejects = why.find("Why it is not accepted"), apart = why.find("What is open beside that");
    const auto overlap = why.find("#2 overlap (VT)", rejects);
    REQUIRE(apart != std::string::npos);
    CHECK(rejects < apart);
    CHECK(apart < overlap);
}

TEST_CASE("an accept says by which methods nobody examined it, though the set has rules for them",
          "[proof]") {
    const Program run;
    std::vector<std::string> words{"register", "T-1"};
    for (const char *word :
         {"--criteria",       "iso-5817",   "--class",       "D",     "--joint",     "groove",
          "--joint-form",     "butt",       "--form",        "plate", "--thickness", "10mm",
          "--weld-thickness", "full",       "--weld-length", "300mm", "--material",  "steel",
          "--magnetic",       "yes",        "--process",     "SMAW",  "--sides",     "one",
          "--inside",         "accessible", "--weld-width",  "14mm",  "--layers",    "3"})
        words.emplace_back(word);
    run.ok(words);
    const auto examined = [&](const char *method) {
        run.ok({"exam", "T-1", method, "--examiner", "A. Field", "--level", "II", "--found", "none"});
    };
    examined("VT");
    CHECK_THAT(flat(run.ok({"judge", "T-1"})), says("Nobody examined it by RT ("));
    const auto proof = [&] {
        const auto judged = nlohmann::json::parse(run.ok({"judge", "T-1", "--json"}));
        for (const auto &one : judged.at("classes"))
            if (one.at("class") == "D") return one.at("proof");
        return nlohmann::json::object();
    };
    CHECK(proof()["rules of no exam"]["RT"] > 10);
    examined("RT");
    CHECK_THAT(flat(run.ok({"judge", "T-1"})), !says("Nobody examined it"));
    CHECK_FALSE(proof().contains("rules of no exam"));
    CHECK_FALSE(proof().at("not in the set").empty());
    CHECK(proof().at("exams that do not count").empty());
    run.ok({"exam", "T-1", "PT", "--examiner", "A. Field", "--level", "I", "--found", "none"});
    CHECK_THAT(proof().at("exams that do not count").at(0).get<std::string>(),
               says("the PT (exam 3) does not count: "));
}
