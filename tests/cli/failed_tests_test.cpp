// Whose failed test a coupon is, and by what it failed, after corrections.
#include "catch.hpp"
#include "cli/json.hpp"
#include "test_coupon.hpp"

using namespace beadbook::test;

namespace {

void registered(const Program &run, const std::string &coupon, const std::string &welder,
                const std::string &welded) {
    run.ok({"register",       coupon,    "--criteria",       "asme-ix-tests", "--class",       "test coupon",
            "--welder",       welder,    "--joint",          "groove",        "--form",        "plate",
            "--thickness",    "0.150in", "--weld-thickness", "0.15in",        "--weld-length", "8in",
            "--magnetic",     "yes",     "--process",        "GTAW",          "--position",    "3G",
            "--progression",  "up",      "--material",       "steel",         "--metal-group", "P1",
            "--filler-group", "F6",      "--backing",        "without",       "--welded",      welded});
    run.ok({"exam", coupon, "VT", "--examiner", "A. Field", "--level", "II", "--found", "none"});
}

void cracked(const Program &run, const std::string &coupon, const std::string &welder) {
    registered(run, coupon, welder, "2026-10-01");
    run.ok({"exam", coupon, "MT", "--examiner", "A. Field", "--level", "II", "--found", "none"});
    run.ok({"exam", coupon, "RT", "--examiner", "A. Field", "--level", "II"});
    run.ok({"log", coupon, "crack 0.2 at 1 in", "--finish"});
}

void passed(const Program &run, const std::string &coupon, const std::string &welder) {
    registered(run, coupon, welder, "2026-10-10");
    run.ok({"exam", coupon, "RT", "--examiner", "A. Field", "--level", "II", "--found", "none"});
    run.ok({"grade", coupon, "passed", "--by", "I. Teach"});
}

/// Its words, wherever lines break.
std::string words_of_text(const std::string &text) {
    std::istringstream words(text);
    std::string out;
    for (std::string word; words >> word;) out += (out.empty() ? "" : " ") + word;
    return out;
}

void enrol_two(const Program &run) {
    run.ok({"enrol", "L3", "--name", "Bo Shore"});
    run.ok({"enrol", "L4", "--name", "Ida Cliff"});
}

} // namespace

TEST_CASE("a slip of the mark that is mended at once makes nobody else's failed test", "[standing]") {
    const Program run;
    enrol_two(run);
    cracked(run, "D-1", "L3");
    run.ok({"change", "D-1", "--welder", "L4", "--why", "stencil misread"});
    run.ok({"change", "D-1", "--welder", "L3", "--why", "it was L3"});
    passed(run, "D-2", "L4");
    run.ok({"qualify", "D-2", "--rules", "asme-ix", "--by", "I. Teach"});
    passed(run, "D-3", "L3");
    CHECK_THAT(run({"qualify", "D-3", "--rules", "asme-ix", "--by", "I. Teach"}).err,
               says("coupon D-1 failed on 2026-10-01: 2 coupons must pass, 1 did"));
}

TEST_CASE("a correction after the grade adds no method that a test failed by", "[standing]") {
    const Program run;
    enrol_two(run);
    cracked(run, "D-1", "L3");
    run.ok({"grade", "D-1", "failed", "--by", "I. Teach"});
    CHECK_THAT(run.ok({"welder", "L3"}), says("D-1 GTAW, welded 2026-10-01, by RT\n"));
    run.ok({"correct", "D-1", "1", "gas pore 0.02 at 1 in", "--why", "slip"});
    CHECK_THAT(run.ok({"welder", "L3"}), says("D-1 GTAW, welded 2026-10-01, by RT\n"));
}

TEST_CASE("the learner's page of an enrolled welder without coupons says that there are none", "[standing]") {
    const Program run;
    enrol_two(run);
    CHECK_THAT(run.ok({"learner", "L4"}), says("no coupon on record names this welder yet"));
}

TEST_CASE(
    "a test that failed by criteria that the rules do not take is told by which, and what is asked next",
    "[standing]") {
    const Program run;
    run.ok({"enrol", "L1", "--name", "J. Reef"});
    test_coupon(run, "Q-1", "2026-10-01", "failed", {{"--criteria", "iso-5817"}, {"--class", "B"}});
    // Nobody knows yet which rules are meant.
    const std::string alone = words_of_text(run.ok({"welder", "L1"}));
    CHECK_THAT(alone, says("it failed by iso-5817, class B, by which no rules here take a test in GTAW") &&
                          says("asme-ix asme-ix-tests; aws-d1.1 aws-d1.1-visual, class welder test"));
    test_coupon(run, "Q-2", "2026-10-05");
    // As the gate asks it: the failure counts, whatever it was by.
    CHECK_THAT(words_of_text(run({"qualify", "Q-2", "--rules", "asme-ix"}).err),
               says("2 coupons must pass, 1 did"));
    const std::string meant = words_of_text(run.ok({"welder", "L1"}));
    CHECK_THAT(meant, says("it failed by iso-5817, class B - next by asme-ix, which counts that and takes a "
                           "test by asme-ix-tests: 1 coupon of its kind must pass"));
    const auto failed = nlohmann::json::parse(run.ok({"welder", "L1", "--json"}))["failed"][0];
    CHECK(failed["failed for"] == "iso-5817, class B");
    CHECK(failed["next"][0]["takes"][0] == "asme-ix-tests");
    // By criteria that they take nothing of it is told.
    test_coupon(run, "Q-3", "2026-10-07", "failed");
    CHECK_THAT(words_of_text(run.ok({"welder", "L1"})), !says("it failed by asme-ix-tests"));
}

TEST_CASE("what follows failed bends says that the retest is bent too, and counts no other", "[standing]") {
    const Program run;
    enrol_two(run);
    registered(run, "D-1", "L3", "2026-10-01");
    run.ok({"exam", "D-1", "RT", "--examiner", "A. Field", "--level", "II", "--found", "none"});
    run.ok({"change", "D-1", "--mechanical", "failed", "--why", "bent today"});
    passed(run, "D-2", "L3"); // by film alone
    const std::string asked =
        "2 coupons of its kind must pass, examined by mechanical tests (bend, fracture or "
        "section), by which it failed";
    CHECK_THAT(words_of_text(run.ok({"welder", "L3"})), says(asked));
    const auto next = json(run, {"welder", "L3"})["failed"][0]["next"][0];
    CHECK(next["coupons"] == 2);
    CHECK(next["examined by"] == nlohmann::json{"mechanical"});
    passed(run, "D-3", "L3");
    run.ok({"change", "D-3", "--mechanical", "passed", "--why", "bent today"});
    run.ok({"grade", "D-3", "passed", "--by", "I. Teach"});
    CHECK_THAT(words_of_text(run.ok({"welder", "L3"})), says("1 coupon of its kind must pass, examined by"));
}

TEST_CASE("failed bends are a reject to whoever grades, and in lists", "[standing]") {
    const Program run;
    enrol_two(run);
    for (const char *mark : {"D-1", "D-2"}) {
        registered(run, mark, "L3", "2026-10-01");
        run.ok({"exam", mark, "RT", "--examiner", "A. Field", "--level", "II", "--found", "none"});
        run.ok({"change", mark, "--mechanical", "failed", "--why", "bent today"});
    }
    CHECK(json(run, {"coupons", "--verdict", "accept"}).empty());
    CHECK(json(run, {"coupons", "--verdict", "reject"}).size() == 2);
    CHECK(json(run, {"grade", "D-1", "failed", "--by", "I. Teach"}).value("against verdict", false) == false);
    run.ok({"grade", "D-1,D-2", "failed", "--by", "I. Teach"});
    CHECK(json(run, {"coupons", "--graded", "failed"}).size() == 2);
}
