// What goes on paper: print, the pages of why, show and summary, curves of limits.
#include "catch.hpp"
#include "run.hpp"
#include "schema.hpp"
#include "temporary.hpp"

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>

using namespace beadbook::test;

namespace {

/// A girth weld of L1, examined; it has one find that rejects, one that is not placed, and one withdrawn.
void rejected_coupon(const Program &run, const std::string &mark = "T-1") {
    run.ok({"register",   mark,    "--criteria",  "mil-hdbk-1890-table-3",
            "--class",    "2",     "--joint",     "groove",
            "--form",     "tube",  "--seam",      "girth",
            "--diameter", "2in",   "--thickness", "0.150in",
            "--magnetic", "yes",   "--material",  "steel",
            "--process",  "GTAW",  "--welder",    "L1 <b>",
            "--cohort",   "autumn"});
    for (const char *method : {"VT", "MT"})
        run.ok({"exam", mark, method, "--examiner", "A. Field", "--level", "II", "--found", "none"});
    run.ok({"exam", mark, "RT", "--examiner", "A. Field", "--level", "II"});
    run.ok({"log", mark, "gas pore 0.09 at 2 in", "gas pore 0.01", "slag l 0.6 w 0.1 at 4 in"});
    run.ok({"withdraw", mark, "indication", "3", "--why", "a scratch on the film"});
    run.ok({"finish", mark, "3", "--found", "2"});
}

/// Writes the page, holds the JSON that tells so against its schema, and gives the page back.
std::string page(const Program &run, std::vector<std::string> words, int code = 0) {
    static int number = 0;
    const std::string file = run.file("page-" + std::to_string(++number) + ".html");
    const std::string command = words[0];
    words.insert(words.end(), {"--html", file, "--json"});
    const Run done = run(words);
    INFO(done.err);
    REQUIRE(done.code == code);
    CHECK(schema_faults(command, done.out) == "");
    CHECK(nlohmann::json::parse(done.out)["written"] == file);
    return read_file(file);
}

std::size_t count_of(const std::string &text, const std::string &part) {
    std::size_t n = 0;
    for (std::size_t at = 0; (at = text.find(part, at)) != std::string::npos; at += part.size()) ++n;
    return n;
}

} // namespace

TEST_CASE("a coupon on paper has its facts, map, ring, bars, criteria, head and lines to sign on") {
    const Program run;
    rejected_coupon(run);
    const std::string out = page(run, {"print", "coupon", "T-1"});
    const std::string head = nlohmann::json::parse(run.ok({"verify", "--json"}))["head"];
    CHECK_THAT(out, says("<h1>Coupon T-1</h1>") && says("L1 &lt;b&gt;") && says("Exam 3: RT"));
    CHECK_THAT(out, says("picture weld-map") && says("picture weld-ring") && says("picture limits"));
    CHECK_THAT(out, says("#1: 0.09 in, limit 0.075 in") && says("without a place"));
    CHECK_THAT(out, says("MIL-HDBK-1890(AT)") && says(" read") &&
                        says("SHA-256</span> <span class=\"long\">" + head) && says("2026-11-25"));
    CHECK_THAT(out, says("examined by, date") && says("graded by, date") && says("An aid, not the code"));
    CHECK(count_of(out, "An aid, not the code") == 1);
    CHECK(count_of(out, "data-number=\"3\"") == 0); // what was withdrawn is not drawn
    CHECK_THAT(out, says("a scratch on the film")); // but told
    for (const char *part : {"http", " src=", "href=", "@import", "<link", "<script"})
        CHECK(count_of(out, part) == 0);
}

TEST_CASE("a coupon that cannot be judged is printed with why not") {
    const Program run;
    run.ok({"register", "T-2"});
    const std::string out = page(run, {"print", "coupon", "T-2"});
    CHECK_THAT(out, says("Not judged: ") && says("names no criteria") && says("An aid, not the code"));
    CHECK(count_of(out, "weld-map\"") == 0);
}

TEST_CASE("an examination is printed with who, how, what was found, and only its own finds") {
    const Program run;
    rejected_coupon(run);
    const std::string out = page(run, {"print", "exam", "T-1", "3"});
    CHECK_THAT(out, says("Examination 3 of coupon T-1, RT") && says("A. Field") && says("level II"));
    CHECK_THAT(out, says("gas pore size 0.09 in at 2 in") && says("found, not judged here"));
    CHECK_THAT(page(run, {"print", "exam", "T-1", "1"}), says("None found."));
    run.ok({"exam", "T-1", "PT"});
    CHECK_THAT(page(run, {"print", "exam", "T-1", "4"}), says("not finished") && says("Nothing is logged."));
}

TEST_CASE("cohorts, welders, what is due and records are printed") {
    const Program run;
    rejected_coupon(run);
    const std::string cohort = page(run, {"print", "cohort", "autumn"});
    CHECK_THAT(cohort, says("picture pareto") && says("picture places") && says("picture shares"));
    CHECK_THAT(cohort, says(">T-1</span></td>") && says("MIL-HDBK-1890(AT)") && says("instructor, date"));
    CHECK(count_of(cohort, "An aid, not the code") == 1);
    run.ok({"enrol", "W1", "--name", "J. Reef"});
    CHECK_THAT(page(run, {"print", "welder", "W1"}), says("J. Reef") && says("its newest entry"));
    const std::string due = page(run, {"print", "due", "--days", "0"});
    CHECK_THAT(due,
               says("its newest entry") && says("<h1>Due through 2026-11-") && says("An aid, not the code"));
    // The title of a page stands above its sections.
    CHECK_THAT(page(run, {"why", "T-1"}, 1), says("<h1>Coupon T-1") && says("<h2>"));
    CHECK_THAT(page(run, {"summary"}), says("<h1>Summary"));
    CHECK(run({"print", "record", "W1", "1", "--html", run.file("x.html")}).code == 3);
    CHECK(run({"print", "cohort", "spring", "--html", run.file("x.html")}).code == 3);
    CHECK(run({"print", "coupon", "T-9", "--html", run.file("x.html")}).code == 3);
}

TEST_CASE("the foot of each sheet names what it is of, and the state of the record") {
    const Program run;
    rejected_coupon(run);
    const std::string out = page(run, {"print", "coupon", "T-1"});
    const std::string head = nlohmann::json::parse(run.ok({"verify", "--json"}))["head"];
    CHECK_THAT(
        out, says("@bottom-left { content: \"Coupon T-1 · record " + head.substr(0, 12) + ", 2026-11-25\"") &&
                 says("counter(page) \" / \" counter(pages)"));
    // A name is a text there too, whatever is in it.
    CHECK_THAT(page(run, {"learner", "L1 <b>"}), says("content: \"Welder L1 \\3c b> · record "));
}

TEST_CASE("several learners are printed as one file, each on sheets that name him") {
    const Program run;
    for (const char *mark : {"1", "2", "3"})
        run.ok({"register", std::string("T-") + mark, "--welder", std::string("L") + mark, "--criteria",
                "mil-hdbk-1890-table-3", "--class", "2", "--cohort", "autumn"});
    const std::string out = page(run, {"print", "learner", "L1..L2", "L3", "L2"});
    for (const char *mark : {"L1", "L2", "L3"})
        CHECK_THAT(out, says(std::string("<h1>Welder ") + mark + "</h1>") &&
                            says(std::string("content: \"Welder ") + mark + " · record "));
    CHECK(count_of(out, "<section class=\"of") == 3);
    // Handed out apart, they are not counted through; one alone is.
    CHECK(count_of(out, "@bottom-right { content: none }") == 4);
    CHECK(count_of(page(run, {"print", "learner", "L1"}), "@bottom-right { content: none }") == 0);
    CHECK(count_of(out, "</section>") == 3);
    CHECK(count_of(out, "What this page rests on") == 3); // each may be handed out alone
    CHECK(run({"print", "learner", "--html", run.file("x.html")}).code == 2);
    CHECK(run({"print", "learner", "L1..L4", "--html", run.file("x.html")}).code == 3);
    run.ok({"grade", "T-2", "failed", "--remark", "cracked", "--by", "I. Reef"});
    run.ok({"enrol", "L2", "--name", "P. Marsh"});
    const std::string cohort = page(run, {"print", "cohort", "autumn"});
    CHECK_THAT(cohort, says("<h2>Grades</h2>") && says("not graded") && says("I. Reef"));
    CHECK_THAT(cohort, says("L2, P. Marsh"));
}

TEST_CASE(
    "an accept on a learner's sheet says who examined, who vouches for nobody, and what the set lacks") {
    const Program run;
    for (const std::string mark : {"T-1", "T-2"}) {
        run.ok({"register",      mark,    "--criteria",  "mil-hdbk-1890-table-3",
                "--class",       "3",     "--joint",     "groove",
                "--form",        "plate", "--thickness", "0.150in",
                "--weld-length", "8in",   "--magnetic",  "yes",
                "--material",    "steel", "--process",   "GTAW",
                "--welder",      "L1"});
        for (const char *method : {"VT", "MT", "RT"})
            run.ok({"exam", mark, method, "--examiner", "A. Field", "--level", "II", "--found", "none"});
    }
    const std::string out = page(run, {"print", "learner", "L1"});
    CHECK(count_of(out, "level II as typed, nobody on record vouches for it") >= 4);
    CHECK(count_of(out, "How sure: ") == 2);
    CHECK(count_of(out, "Not in this set, so that the accept does not speak of it: ") == 2);
    CHECK(count_of(out, "so that the accept does not speak of it: as said above.") == 1);
    CHECK(count_of(out, "Class 3</") == 2); // the verdict stands with each
}

TEST_CASE("labels carry the mark, or open the coupon at an address") {
    const Program run;
    rejected_coupon(run);
    run.ok({"register", "T.2", "--cohort", "spring"});
    run.ok({"register", "T-3"});
    run.ok({"withdraw", "T-3", "coupon", "--why", "cut up"});
    const std::string all = page(run, {"print", "labels"});
    CHECK(count_of(all, "<svg") == 2); // not the withdrawn one
    CHECK_THAT(all,
               says("The code says: T-1") && says("<path class=\"p-ink\"") && says("L1 &lt;b&gt;, autumn"));
    CHECK(count_of(page(run, {"print", "labels", "--cohort", "spring"}), "<svg") == 1);
    CHECK_THAT(page(run, {"print", "labels", "T.2", "--at", "https://bench.example/"}),
               says("The code says: https://bench.example/coupon/T.2"));
    CHECK(run({"print", "labels", "--cohort", "none", "--html", run.file("x.html")}).code == 3);
    CHECK(run({"print", "labels", "T-1", "--cohort", "spring", "--html", run.file("x.html")}).code == 2);
}

TEST_CASE("print says what it cannot do, and a PDF what to install") {
    const Program run;
    rejected_coupon(run);
    const std::vector<std::pair<std::vector<std::string>, std::string>> rows{
        {{"print", "coupon", "T-1"}, "say where to: --html FILE or --pdf FILE"},
        {{"print", "coupons", "T-1", "--html", "x"},
         "expected coupon, exam, welder, learner, cohort, record, due or labels"},
        {{"print", "coupon", "T-1", "--html", "x", "--pdf", "y"}, "one at a time"},
        {{"print", "exam", "T-1", "--html", "x"}, "print exam takes 2 words more"},
        {{"print", "coupon", "T-1", "--html", "x", "--at", "u"}, "--at goes with labels"},
        {{"print", "coupon", "T-1", "--html", "x", "--paper", "A4"}, "--paper goes with --pdf"},
        {{"print", "coupon", "T-1", "--pdf", "x", "--paper", "A5"}, "expected A4 or Letter"}};
    for (const auto &[words, what] : rows) {
        const Run done = run(words);
        INFO(words[1] << ": " << done.err);
        CHECK(done.code == 2);
        CHECK_THAT(done.err, says(what));
    }
    const Run missing = run({"print", "coupon", "T-1", "--pdf", run.file("T-1.pdf")}); // PATH is empty here
    CHECK(missing.code == 3);
    CHECK_THAT(missing.err, says("install weasyprint or chromium") && says("apt-get install weasyprint"));
    CHECK_FALSE(std::filesystem::exists(run.file("T-1.pdf")));
    page(run, {"print", "coupon", "T-1"});
    const std::string file = run.file("once.html");
    run.ok({"print", "coupon", "T-1", "--html", file});
    CHECK(run({"print", "coupon", "T-1", "--html", file}).code == 3); // a file is never written over
}

TEST_CASE("why, show, summary and learner are pages too, with the foot of all") {
    const Program run;
    rejected_coupon(run);
    const std::string why = page(run, {"why", "T-1"}, 1);
    CHECK_THAT(why, says("picture weld-map") && says("picture limits") && says("its newest entry"));
    const std::string shown = page(run, {"show", "T-1"});
    CHECK_THAT(shown, says("picture weld-map") && says("found, not judged here"));
    CHECK_THAT(page(run, {"summary"}), says("picture pareto") && says("its newest entry"));
    CHECK_THAT(page(run, {"learner", "L1 <b>"}), says("picture weld-map") && says("MIL-HDBK-1890(AT)"));
}

TEST_CASE("in a terminal a picture is drawn with characters, or left to the table beside") {
    const Program run;
    rejected_coupon(run);
    const std::string why = run({"why", "T-1"}).out;
    CHECK_THAT(why, says("Where on the weld\n") && says("    Without a place: #2\n"));
    CHECK_THAT(why, says("XXXX") && says("#1: 0.09 in, limit 0.075 in\n    | is the limit"));
    CHECK_THAT(run.ok({"summary"}),
               says("gas pore   ##############################") && says("100 % so far\n"));
}

TEST_CASE("limits over thickness are a table in the terminal and curves on a page") {
    const Program run;
    const std::string text = run.ok({"criteria", "picture", "mil-hdbk-1890-table-3"});
    CHECK_THAT(text, says("Size of a pore or void") && says("Without a curve"));
    const Run done = run({"criteria", "picture", "mil-hdbk-1890-table-3", "--json"});
    REQUIRE(done.code == 0);
    CHECK(schema_faults("criteria", done.out) == "");
    const auto json = nlohmann::json::parse(done.out);
    // MIL-HDBK-1890, Table III (read): size of a pore, class 1 the lesser of T/3 and 0.060 in, class 2 of T/2
    // and 0.080 in.
    const auto &rules = json["over thickness"];
    const auto pore =
        std::find_if(rules.begin(), rules.end(), [](const auto &r) { return r["id"] == "pore-size"; });
    REQUIRE(pore != rules.end());
    REQUIRE(json["thickness"].size() == 64);
    CHECK(json["thickness"][7]["text"] == "0.125 in");
    CHECK((*pore)["limits"]["2"]["at"][7]["exact"] == "1587500");  // 1/16 in
    CHECK((*pore)["limits"]["2"]["at"][63]["exact"] == "2032000"); // 0.080 in
    CHECK((*pore)["limits"]["1"]["at"][63]["exact"] == "1524000"); // 0.060 in
    CHECK((*pore)["limits"]["2"]["standing"] == "read");
    const auto &others = json["without a curve"];
    const auto gap =
        std::find_if(others.begin(), others.end(), [](const auto &r) { return r["id"] == "pore-gap"; });
    REQUIRE(gap != others.end());
    CHECK((*gap)["why"] == "its limit follows from the find itself");
    const std::string curves = page(run, {"criteria", "picture", "mil-hdbk-1890-table-3"});
    CHECK_THAT(curves, says("picture limit-curve") && says("class 1"));
    CHECK(run({"criteria", "list", "--html", run.file("x.html")}).code == 2);
    CHECK(run({"criteria", "list", "--joint", "groove"}).code == 2);
}

TEST_CASE("every shipped set has a picture that holds its schema") {
    const Program run;
    const auto sets = nlohmann::json::parse(run.ok({"criteria", "list", "--json"}));
    REQUIRE(sets.size() > 10);
    for (const auto &set : sets) {
        const std::string name = set["set"];
        INFO(name);
        const Run done = run({"criteria", "picture", name, "--json"});
        REQUIRE(done.code == 0);
        CHECK(schema_faults("criteria", done.out) == "");
    }
}
