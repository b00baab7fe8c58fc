#include "catch.hpp"
#include "cli/deeds.hpp"
#include "pages/bench.hpp"
#include "run.hpp"
#include "terminal/command.hpp"

#include <nlohmann/json.hpp>
#include <sys/stat.h>
#include <unistd.h>

using namespace beadbook;
using namespace beadbook::test;

namespace {

void small_coupon(const Program &run) {
    run.ok({"register", "T-1", "--criteria", "mil-hdbk-1890-table-3", "--class", "2", "--joint", "groove",
            "--thickness", "0.150in", "--weld-length", "8in", "--magnetic", "yes", "--material", "steel",
            "--process", "GTAW"});
    // The film is still being read: RT is open.
    for (const char *exam : {"VT", "MT"})
        run.ok({"exam", "T-1", exam, "--examiner", "A. Field", "--level", "II", "--found", "none"});
    run.ok({"exam", "T-1", "RT", "--examiner", "A. Field", "--level", "II"});
}

} // namespace

TEST_CASE("every command has help with an example, the exit codes and the caution") {
    const Program run;
    for (const auto &command : commands()) {
        const std::string help = run.ok({command.name(), "--help"});
        INFO(command.name());
        CHECK(help.find("Example:\n  beadbook " + command.name()) != std::string::npos);
        CHECK(help.find("Exit codes:") != std::string::npos);
        CHECK(help.find("An aid, not the code") != std::string::npos);
        CHECK(run.ok({"help", command.name()}) == help);
        CHECK(run.ok({"--help"}).find("  " + command.name() + " ") != std::string::npos);
    }
}

TEST_CASE("each command that has words does something, and what is done has words") {
    std::vector<std::string> named, done;
    for (const auto &command : commands()) named.push_back(command.name());
    for (const auto &[name, deed] : deeds(run_bench)) done.push_back(name);
    std::sort(named.begin(), named.end());
    CHECK(named == done);
    for (const auto &command : commands())
        for (const auto &option : command.options) {
            INFO(command.name() << " --" << option.name);
            CHECK_FALSE(option.help.empty());
            CHECK(option.help.find('{') == std::string::npos);
            CHECK(std::count_if(command.options.begin(), command.options.end(),
                                [&](const Option &other) { return other.name == option.name; }) == 1);
        }
}

TEST_CASE("wrong words end with 2, say what was meant, and change nothing") {
    const Program run;
    const std::vector<std::pair<std::vector<std::string>, std::string>> rows{
        {{}, "beadbook COMMAND"},
        {{"jugde", "T-1"}, "did you mean 'judge'?"},
        {{"judge", "--clas", "2", "T-1"}, "there is no option '--clas'; did you mean '--class'?"},
        {{"judge", "--cl", "2", "T-1"}, "there is no option '--cl'"},
        {{"judge"}, "give one COUPON, several, or --all"},
        {{"judge", "T-1", "T-2"}, "one word too many"},
        {{"register"}, "too few words; expected COUPON"},
        {{"exam", "T-1", "UT"}, "'UT' is no exam; expected VT, MT, PT or RT"},
        {{"grade", "T-1", "perhaps"}, "expected passed or failed"},
        {{"withdraw", "T-1", "coupon", "1"}, "a whole coupon takes no number"},
        {{"withdraw", "T-1", "exam", "-1"}, "-1"},
        {{"correct", "T-1", "x", "pore"},
         "'x' is no number of an indication; expected a whole number such as 3"},
        {{"export", "xml"}, "expected json, lines or csv"},
        {{"export", "csv"}, "which table?"},
        {{"criteria", "frob"},
         "'frob' is nothing that is done here; expected list, types, show, picture, compare, check, cases or "
         "schema"},
    };
    for (const auto &[words, expected] : rows) {
        const Run r = run(words);
        INFO(r.err);
        CHECK(r.code == 2);
        CHECK(r.err.find(expected) != std::string::npos);
        CHECK(r.out.empty());
    }
    CHECK_FALSE(std::filesystem::exists(run.book()));
}

TEST_CASE("exit codes tell the verdict") {
    const Program run;
    small_coupon(run);
    CHECK(run({"judge", "T-1"}).code == 5);
    run.ok({"log", "T-1", "gas pore 0.055 at 2", "--finish"});
    CHECK(run({"judge", "T-1"}).code == 0);
    CHECK(run({"judge", "T-1", "--class", "1"}).code == 1);
    CHECK(run({"why", "T-1", "--class", "1"}).code == 1);
    run.ok({"reopen", "T-1", "3", "--why", "one more on the film"});
    run.ok({"log", "T-1", "gas pore at 4", "--finish"});
    CHECK(run({"judge", "T-1"}).code == 5);
    CHECK(run({"judge", "--all"}).code == 5);
    CHECK(run({"judge", "T-1", "--class", "9"}).code == 3);
    CHECK(run({"judge", "T-9"}).code == 3);
    CHECK(run({"judge", "T-1", "--book", "/nowhere/at/all.db"}).code == 4);
}

TEST_CASE("bad data end with 3, name the mistake, and store nothing") {
    const Program run;
    small_coupon(run);
    const std::string before = run.ok({"verify", "--json"});
    const std::vector<std::pair<std::vector<std::string>, std::string>> rows{
        {{"register", "T-1"}, "registered already"},
        {{"register", ""}, "a coupon's mark is"},
        {{"register", "a b"}, "a coupon's mark is"},
        {{"register", std::string(41, 'x')}, "a coupon's mark is"},
        {{"register", "\xff"}, "a coupon's mark is"},
        {{"register", "X", "--thickness", "0in"}, "is zero"},
        {{"register", "X", "--thickness", "-1"}, "negative"},
        {{"register", "X", "--thickness", "nan"}, "does not begin with a number"},
        {{"register", "X", "--thickness", "5 deg"}, "is an angle"},
        {{"register", "X", "--thickness", ""}, "nothing given"},
        {{"register", "X", "--temperature", "350"}, "has no unit"},
        {{"register", "X", "--joint", "grove"}, "did you mean 'groove'?"},
        {{"register", "X", "--units", "yd"}, "expected in or mm"},
        {{"register", "X", "--also", "UT"}, "is no exam"},
        {{"register", "X", "--welder", "\xff\xfe"}, "not UTF-8"},
        {{"register", "X", "--welder", "a\nb"}, "control character"},
        {{"register", "X", "--welder", std::string(3000, 'x')}, "longer than 2000 bytes"},
        {{"register", "X", "--criteria", "ufgs-15216m"}, "did you mean 'ufgs-15216n'?"},
        {{"register", "X", "--criteria", "/"}, "this is a folder"},
        {{"register", "X", "--criteria", "no/such.yaml"}, "cannot be read"},
        {{"register", "X", "--criteria", "iso-5817", "--class", "E"},
         "have no class 'E'; they have B, C and D"},
        {{"exam", "T-1", "VT", "--date", "2026-02-30"}, "no day of the calendar"},
        {{"exam", "T-1", "VT", "--condition", "light"}, "write it as name=value"},
        {{"exam", "T-1", "VT", "--replaces", "9", "--why", "slip"}, "has no exam 9"},
        {{"exam", "nothing", "VT"}, "there is no coupon 'nothing'"},
        {{"log", "T-1", "--exam", "9", "pore 0.1"}, "has no exam 9"},
        {{"log", "T-1", "--file", "/no/such/file"}, "cannot be read"},
        {{"log", "T-1", "--file", "/"}, "this is a folder"},
        {{"log", "T-1"}, "there is no line to log"},
        {{"correct", "T-1", "7", "pore 0.1", "--why", "slip"}, "has no indication #7"},
        {{"change", "T-1", "--thickness", "0.2in"}, "needs a reason"},
        {{"change", "T-1", "--why", "slip"}, "this changes nothing"},
        {{"remark", "T-1", " "}, "the remark is empty"},
        {{"import", "json", "--file", "/no/such/file"}, "cannot be read"},
        {{"criteria", "show", "nothing"}, "there is no criteria set"},
    };
    for (const auto &[words, expected] : rows) {
        const Run r = run(words);
        INFO(expected << " / " << r.err);
        CHECK(r.code == 3);
        CHECK(r.err.find(expected) != std::string::npos);
        CHECK(r.out.empty());
    }
    CHECK(run.ok({"verify", "--json"}) == before);
}

TEST_CASE("a batch with bad lines stores nothing and names every one") {
    const Program run;
    small_coupon(run);
    const Run r =
        run({"log", "T-1"},
            "pore 0.04 at 1\n# a comment\nundrcut d 0.1\n\npore 0.04 at 99\nslag .1x.02 at 3\npore oops\n");
    CHECK(r.code == 3);
    CHECK(r.err.find("3 lines cannot be taken, nothing was stored:") != std::string::npos);
    CHECK(r.err.find("\n-:3:1: 'undrcut d'") != std::string::npos);
    CHECK(r.err.find("\n-:5:14: '99' is off the weld") != std::string::npos);
    CHECK(r.err.find("\n-:7:6: 'oops' is not understood") != std::string::npos);
    CHECK(run.ok({"show", "T-1"}).find("#1") == std::string::npos);
    run.ok({"log", "T-1"}, "pore 0.04 at 1\nslag .1x.02 at 3\n");
    CHECK(run.ok({"show", "T-1"}).find("#2 slag inclusion length .1 in width .02 in at 3 in") !=
          std::string::npos);
}

TEST_CASE("the prompt stores each line, shows the live verdict, and can undo") {
    const Program run;
    small_coupon(run);
    const Run r = run({"log", "T-1"},
                      "pore 0.055 at 1\noops\npore 0.9 at 3\nundo\nlist\nfinish\nyes\npore 1 at 1\n", true);
    CHECK(r.code == 0);
    CHECK(r.out.find("#1 gas pore size 0.055 in at 1 in\n  1: reject | 2: cannot say | 3: cannot say\n") !=
          std::string::npos);
    CHECK(r.out.find("^ 'oops' does not begin with a type") != std::string::npos);
    CHECK(r.out.find("#2 withdrawn") != std::string::npos);
    CHECK(r.out.find("exam 3 (RT) of coupon T-1 finished: 1 found") != std::string::npos);
    CHECK(r.out.find("  1: reject | 2: accept | 3: accept\n") != std::string::npos);
    CHECK(r.out.find("1 indication logged") != std::string::npos);
    CHECK(run({"judge", "T-1"}).code == 0);
    CHECK(run.ok({"show", "T-1"}).find("0.9 in") > run.ok({"show", "T-1"}).find("#2 was logged as"));
    CHECK(run.ok({"history", "T-1"}).find("#2 withdrawn  (instead of entry") != std::string::npos);
}

TEST_CASE("the prompt corrects a find, and keeps the old line") {
    const Program run;
    small_coupon(run);
    const Run r = run({"log", "T-1"}, "pore 0.055 at 1\ncorrect 1 pore 0.01 at 2\ncorrect 1\n", true);
    CHECK_THAT(r.out, says("#1 gas pore size 0.01 in at 2 in; the old line is kept\n"));
    CHECK_THAT(r.out, says("which find, and to what?"));
    CHECK_THAT(run.ok({"history", "T-1", "--json"}), says("corrected at the prompt"));
}

TEST_CASE("of a find of a finished exam the prompt asks why it is corrected") {
    const Program run;
    small_coupon(run);
    const Run r = run({"log", "T-1"},
                      "pore 0.055 at 1\nfinish\ncorrect 1 pore 0.01 at 2\n\ncorrect 1 pore 0.01 at 2\n"
                      "the scale was read wrong\n",
                      true);
    CHECK_THAT(r.out, says("why is it corrected?") && says("not corrected; a reason is needed"));
    CHECK_THAT(r.out, says("#1 gas pore size 0.01 in at 2 in; the old line is kept\n"));
    CHECK_THAT(run.ok({"history", "T-1", "--json"}),
               says("the scale was read wrong") && !says("corrected at the prompt"));
}

TEST_CASE("the prompt says why it cannot say, goes from coupon to coupon, and takes a find of its own back") {
    const Program run;
    small_coupon(run);
    run.ok({"register", "T-2", "--criteria", "ufgs-15216n", "--weld-length", "5in"});
    run.ok({"exam", "T-2", "VT", "--examiner", "A. Field", "--level", "II"});
    const Run r = run(
        {"log", "T-1"},
        "help\npore 0.01 at 1\npore 0.02 at 2\nundo 1\nundo 1\nverdict\non T-9\nfinish\nyes\npore 0.01 at 4\n"
        "on T-2\nnone\non T-2\ndone\npore 0.03 at 5\n",
        true);
    CHECK(r.code == 0);
    CHECK_THAT(r.out, says("take back the last line of this sitting"));
    CHECK_THAT(r.out, says("T-1> ") && says("T-2> "));
    CHECK_THAT(r.out, says("  2: ")); // the class that is sought, and what keeps it open
    CHECK_THAT(r.out, says("#1 withdrawn") && says("#1 was not logged in this sitting"));
    CHECK_THAT(r.out, says("there is no coupon 'T-9'"));
    CHECK_THAT(r.out, says("the exam is finished; 'on COUPON' goes to the next"));
    CHECK_THAT(r.out, says("exam 1 (VT) of coupon T-2 finished: none found"));
    CHECK_THAT(r.out, says("no exam of coupon T-2 is open"));
    CHECK_THAT(r.out, says("1 indication logged"));
    CHECK_THAT(run.ok({"show", "T-2"}), !says("#1"));
}

TEST_CASE("a grade that differs from the verdict needs a remark and is marked") {
    const Program run;
    small_coupon(run);
    run.ok({"log", "T-1", "gas pore 0.09 at 2", "--finish"});
    const Run r = run({"grade", "T-1", "passed"});
    CHECK(r.code == 3);
    CHECK(r.err.find("the verdict for class 2 is 'reject'; to grade it passed all the same, say why") !=
          std::string::npos);
    run.ok({"grade", "T-1", "passed", "--remark", "ground flush and examined again on paper"});
    CHECK(run.ok({"coupons"}).find("passed (against the verdict)") != std::string::npos);
    run.ok({"grade", "T-1", "failed"});
    CHECK(run.ok({"coupons"}).find("against the verdict") == std::string::npos);
    CHECK(run({"why", "T-1"}).out.find("Graded failed for class 2 by tester") != std::string::npos);
}

TEST_CASE("verdicts are stored once, with the criteria they were taken by, and can be judged again") {
    const Program run;
    small_coupon(run);
    run.ok({"log", "T-1", "gas pore 0.055 at 2", "--finish"});
    run.ok({"judge", "T-1"});
    const std::string once = run.ok({"verify", "--json"});
    run.ok({"judge", "T-1"});
    CHECK(run.ok({"verify", "--json"}) == once);
    run({"judge", "T-1", "--criteria", "ufgs-15216n"});
    run.ok({"reopen", "T-1", "3", "--why", "one more"});
    run.ok({"log", "T-1", "gas pore 0.01 at 4"});
    CHECK(run.ok({"verify", "--replay"})
              .find("2 verdicts judged again and 0 ranges worked out again, all the same") !=
          std::string::npos);
    const auto head = nlohmann::json::parse(run.ok({"verify", "--json"}))["head"].get<std::string>();
    run.ok({"verify", "--head", head});
    CHECK(run({"verify", "--head", std::string(64, 'a')}).code == 4);
    CHECK(run({"verify", "--head", ""}).code == 2); // as a script has it that noted none
}

TEST_CASE("JSON out of every command that prints data is JSON") {
    const Program run;
    small_coupon(run);
    run.ok({"log", "T-1", "gas pore 0.055 at 2", "crack l 0.1 at 3"});
    run({"judge", "T-1"});
    for (const std::vector<std::string> &words :
         std::vector<std::vector<std::string>>{{"judge", "T-1", "--json"},
                                               {"judge", "--all", "--json"},
                                               {"coupons", "--json"},
                                               {"show", "T-1", "--json"},
                                               {"history", "T-1", "--json"},
                                               {"verify", "--json"},
                                               {"criteria", "list", "--json"},
                                               {"criteria", "show", "iso-5817", "--json"},
                                               {"export", "json"}}) {
        const Run r = run(words);
        INFO(words[0]);
        CHECK(nlohmann::json::accept(r.out));
        CHECK(r.out.find("\033[") == std::string::npos);
    }
    const auto judged = nlohmann::json::parse(run({"judge", "T-1", "--json"}).out);
    CHECK(judged["classes"][0]["verdict"] == "reject");
    const auto &finding = judged["classes"][0]["findings"][1];
    CHECK(finding["rule"] == "pore-size");
    CHECK(finding["measured"]["exact"] == "1397000");
    CHECK(finding["limit"]["exact"] == "1270000");
    CHECK(finding["standing"] == "read");
}

TEST_CASE("an export can be imported again and exports the same") {
    const Program run, other, sheets;
    small_coupon(run);
    run.ok({"log", "T-1", "gas pore 0.055 at 2 # \"quoted\", with, commas",
            "undercut l 3/8 at 1-1/2 smooth face", "slag from 2 to 2.4 across left 0.1", "pore 0.1 mid 5"});
    run.ok({"withdraw", "T-1", "indication", "1", "--why", "gone"});
    run.ok({"exam", "T-1", "PT", "--condition", "dwell=10 min", "--incomplete", "root not reached"});
    run.ok({"register", "T-2", "--form", "tube", "--seam", "girth", "--diameter", "50 mm", "--units", "mm"});
    run.ok({"exam", "T-2", "PT"});
    run.ok({"log", "T-2", "ri 1.5 at 3:30"});
    const std::string json = run.ok({"export", "json"});
    other.ok({"import", "json"}, json);
    CHECK(other.ok({"export", "json"}) == json);
    for (const char *table : {"coupons", "exams", "indications"})
        sheets.ok({"import", "csv", table}, run.ok({"export", "csv", table}));
    CHECK(sheets.ok({"export", "json"}) == json);
    const Run again = other({"import", "json"}, json);
    CHECK(again.code == 3);
    CHECK(again.err.find("2 coupons cannot be taken, nothing was stored:") != std::string::npos);
}

TEST_CASE("broken exchange files are refused whole") {
    const Program run;
    small_coupon(run);
    const std::string before = run.ok({"verify", "--json"});
    const std::string head = R"({"format": "beadbook exchange", "version": 1, "coupons": )";
    const std::vector<std::pair<std::string, std::string>> json{
        {"", "this is not JSON"},
        {"[]", "expected {\"format\""},
        {R"({"format": "beadbook exchange", "version": 2, "coupons": []})", "reads version 1"},
        {head + "[1]}", "a coupon needs an \"id\""},
        {head + R"([{"id": "N", "fields": {"thicknes": "1 in"}}]})", "did you mean 'thickness'?"},
        {head + R"([{"id": "N", "fields": {"thickness": 3}}]})",
         "1:95: coupon 1 (N): thickness: expected text such as"},
        {head + R"([{"id": "N", "exams": 3}]})", ""},
        {head + R"([{"id": "N", "exams": [{"method": "XX", "date": "2026-01-01"}]}]})", "is no method"},
        {head +
             R"([{"id": "N", "exams": [{"method": "VT", "date": "2026-01-01", "indications": [{"type": "nothing"}]}]}]})",
         "is no type"},
        {head +
             R"([{"id": "N", "exams": [{"method": "VT", "date": "2026-01-01", "indications": [{"type": "crack", "length": -1}]}]}]})",
         "expected text such as"},
        {head + R"([{"id": "N"}, {"id": "N"}]})", "registered already"},
    };
    for (const auto &[text, expected] : json) {
        const Run r = run({"import", "json"}, text);
        INFO(text << r.err);
        CHECK(r.code == 3);
        CHECK(r.err.find(expected) != std::string::npos);
    }
    const std::vector<std::pair<std::string, std::string>> csv{
        {"", "the CSV is empty"},
        {"coupon,exam,typ\n", "unknown column 'typ'; did you mean 'type'?"},
        {"coupon,coupon\n", "stands twice"},
        {"coupon,exam,type\nT-1,1\n", "has 2 cells, the first row has 3"},
        {"coupon,exam,type\nT-1,x,crack\n", "expected a whole number"},
        {"coupon,exam,type\nT-1,9,crack\n", "has no exam 9"},
        {"coupon,exam,type\nT-9,1,crack\n", "there is no coupon 'T-9'"},
        {"coupon,exam,type\n\"T-1,1,crack\n", "a quote is out of place or not closed"},
        {"coupon,exam,type,at\nT-1,1,crack,99\nT-1,1,crak,1\n", "2 rows cannot be taken"},
    };
    for (const auto &[text, expected] : csv) {
        const Run r = run({"import", "csv", "indications"}, text);
        INFO(text << r.err);
        CHECK(r.code == 3);
        CHECK(r.err.find(expected) != std::string::npos);
    }
    CHECK(run.ok({"verify", "--json"}) == before);
}

TEST_CASE("trouble with the record ends with 4 and says what to do") {
    const Program run;
    small_coupon(run);
    write_file(run.file("letter.txt"), "not a database, but long enough to look at");
    CHECK(run({"coupons", "--book", run.file("letter.txt")}).err.find("no record of ours") !=
          std::string::npos);
    CHECK(run({"coupons", "--book", run.file("letter.txt")}).code == 4);
    CHECK(run({"coupons", "--book", run.file("")}).code == 4);
    CHECK(run({"backup", run.file("letter.txt")}).code == 3); // not the record, a file in its way
    if (geteuid() == 0) return;                               // root may write anywhere
    chmod(run.book().c_str(), 0444);
    CHECK(run({"remark", "T-1", "x"}).code == 4);
    chmod(run.book().c_str(), 0644);
}

TEST_CASE("criteria list, show and check") {
    const Program run;
    CHECK(run.ok({"criteria", "list"}).find("ufgs-15216n") != std::string::npos);
    CHECK(run.ok({"criteria", "types"}).find("gp     2011        gas pore (pore)") != std::string::npos);
    const std::string shown = run.ok({"criteria", "show", "mil-std-2219a"});
    CHECK(shown.find("Known gaps:\n  - Table V") != std::string::npos);
    write_file(run.file("bad.yaml"), "set: x\ntitle: y\n");
    const Run bad = run({"criteria", "check", run.file("bad.yaml")});
    CHECK(bad.code == 3);
    CHECK(bad.err.find("'units' is missing") != std::string::npos);
    CHECK(run.ok({"criteria", "check", "iso-5817", "--coverage"}).find("RT, always 'cannot say': ") !=
          std::string::npos);
}
