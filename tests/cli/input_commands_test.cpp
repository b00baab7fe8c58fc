// What is asked at the prompt, and what move, restore, withdraw and history print.
#include "catch.hpp"
#include "cli/json.hpp"

#include <algorithm>
#include <set>

using namespace beadbook::test;

namespace {

void coupon(const Program &run, const std::string &mark = "T-1") {
    run.ok({"register", mark, "--criteria", "mil-hdbk-1890-table-3", "--class", "2", "--joint", "groove",
            "--thickness", "0.150in", "--weld-length", "8in", "--magnetic", "yes"});
}

void exam(const Program &run, const std::string &method, const std::string &mark = "T-1") {
    run.ok({"exam", mark, method, "--examiner", "A. Field", "--level", "II"});
}

} // namespace

TEST_CASE("the prompt asks about what nobody would believe, and takes it on a yes alone") {
    const Program run;
    coupon(run);
    exam(run, "VT");
    const Run r = run({"log", "T-1"}, "crack l 0.2 d 5 at 3\nno\ncrack l 0.2 d 4 at 3\nyes\ndone\n", true);
    CHECK(r.code == 0);
    CHECK_THAT(r.out,
               says("is that meant? depth 5 in, thicker member 0.15 in: an imperfection is not deeper"));
    CHECK_THAT(r.out, says("yes or no: "));
    CHECK_THAT(r.out, says("not logged"));
    CHECK_THAT(r.out, says("#1 crack length 0.2 in depth 4 in at 3 in"));
    CHECK_THAT(r.out, says("1 indication logged"));
    CHECK_THAT(run.ok({"show", "T-1"}), says("(sure in spite of depth-over-wall)"));
    CHECK_THAT(run({"why", "T-1"}).out, says("#1 is as it was said, sure in spite of depth-over-wall."));
    const Run refused = run({"log", "T-1", "crack l 0.2 d 5 at 3"});
    CHECK(refused.code == 3);
    CHECK_THAT(refused.err, says("give --sure\n"));
}

TEST_CASE("the prompt takes lines of several open exams by their methods") {
    const Program run;
    coupon(run);
    exam(run, "VT");
    exam(run, "MT");
    const Run r = run({"log", "T-1"}, "pore 0.02 at 1\nMT crack 0.2 at 3\ndone\n", true);
    CHECK_THAT(r.out, says("open: 1 (VT) and 2 (MT), a line begins with its method"));
    CHECK_THAT(r.out, says("which exam found it?"));
    CHECK_THAT(r.out, says("#1 MT crack size 0.2 in at 3 in"));
    CHECK(json(run, {"show", "T-1"})["exams"][1]["indications"].size() == 1);
}

TEST_CASE("what was typed at the prompt and not logged is asked about before an exam is finished") {
    const auto sitting = [](const std::string &lines) {
        const Program run;
        coupon(run);
        exam(run, "VT");
        exam(run, "MT");
        const Run r = run({"log", "T-1"}, lines, true);
        const auto exams = json(run, {"show", "T-1"})["exams"];
        return std::pair(r.out, exams[0].contains("found") || exams[1].contains("found"));
    };
    const std::string asks = "was not logged; is the exam finished without it?";
    // Of which exam, misspelt, or not taken when it was asked about: all of them are nothing that was not
    // found.
    for (const char *lines :
         {"crack 0.2 at 3\nall\n", "vt crakc l.3 at 2\nall\n", "crak 0.2 at 3\nvt none\n",
          "vt crakc 0.3 at 3\nvt uc 0.02 at 1\nvt finish\n", "vt crack l 0.2 d 5 at 3\nvt none\nvt none\n"}) {
        INFO(lines);
        const auto [said, finished] = sitting(lines);
        CHECK_THAT(said, says(asks));
        CHECK_FALSE(finished);
    }
    CHECK(sitting("vt crakc l.3 at 2\nvt none\nyes\n").second);
    CHECK(sitting("vt crakc l.3 at 2\nvt none\nY\n").second);
    // Of another method than the exam that is finished it says nothing.
    CHECK(sitting("vt crakc l.3 at 2\nmt none\n").first.find(asks) == std::string::npos);
    CHECK_THAT(sitting("vt crakc l.3 at 2\nmt none\nvt none\n").first, says(asks));
    // What was mended is forgotten.
    const auto [said, finished] = sitting("crack 0.2 at 3\nvt crack 0.2 at 3\nvt finish\n");
    CHECK(said.find(asks) == std::string::npos);
    CHECK(finished);
}

TEST_CASE("the prompt is neither quiet nor a dry run, and its mark stands under the word") {
    const Program run;
    coupon(run);
    exam(run, "VT");
    for (const char *option : {"-q", "-n"}) {
        const Run silent = run({"log", "T-1", option}, "crack 0.2 at 3\n", true);
        CHECK(silent.code == 2);
        CHECK_THAT(silent.err, says("the prompt shows each line and stores it"));
    }
    CHECK_THAT(run({"log", "T-1"}, "pore 0.1 frob\n", true).out,
               says("T-1> " + std::string(14, ' ') + "^ 'frob'"));
}

TEST_CASE("finish takes several methods, and none in capitals") {
    const Program run;
    coupon(run);
    exam(run, "VT");
    exam(run, "MT");
    const Run none = run({"log", "T-1", "None"});
    CHECK_THAT(none.err, says("'None' is no find"));
    CHECK_THAT(none.err, says("mend it with 'beadbook finish T-1 1 --found none', or 'beadbook finish T-1 2 "
                              "--found none'"));
    CHECK(run({"finish", "T-1", "VT,PT", "--found", "none"}).code == 3);
    CHECK_FALSE(json(run, {"show", "T-1"})["exams"][0].contains("found")); // all or none
    CHECK(run({"finish", "T-1", "VT", "PT", "--found", "none"}).code == 3);
    CHECK_FALSE(json(run, {"show", "T-1"})["exams"][0].contains("found"));
    const std::string done = run.ok({"finish", "T-1", "VT", "MT", "--found", "None"});
    CHECK_THAT(done, says("exam 1 (VT) of coupon T-1 finished: none found"));
    CHECK_THAT(done, says("exam 2 (MT) of coupon T-1 finished: none found"));
}

TEST_CASE("of two open exams by one method the prompt says how each is reached") {
    const Program run;
    coupon(run);
    exam(run, "VT");
    exam(run, "VT");
    const Run asked = run({"log", "T-1"}, "none\nVT none\non T-1 2\nnone\n", true);
    CHECK_THAT(asked.out,
               says("of which exam? type 'on T-1 1' and then 'none' or 'on T-1 2' and then 'none'"));
    CHECK_THAT(asked.out, says("several are open by that method; type 'on T-1 1' and then 'none'"));
    CHECK_THAT(asked.out, says("exam 2 (VT) of coupon T-1 finished: none found"));
}

TEST_CASE("of two open exams none and finish take the method, and all finishes both") {
    const Program run;
    coupon(run);
    exam(run, "VT");
    exam(run, "MT");
    const Run asked = run({"log", "T-1"}, "none\nRT none\nfinish\n", true);
    CHECK_THAT(asked.out, says("of which exam? type 'VT none' or 'MT none', or 'all' of all"));
    CHECK_THAT(asked.out, says("no open exam is by that method; type 'VT none' or 'MT none'"));
    CHECK_THAT(asked.out, says("type 'VT finish' or 'MT finish'"));
    CHECK_FALSE(json(run, {"show", "T-1"})["exams"][0].contains("found"));
    const Run each =
        run({"log", "T-1"}, "VT pore 0.02 at 1\nMT none\nundo\nnone MT\nVT finish\nVT pore 1 at 1\n", true);
    CHECK_THAT(each.out, says("exam 2 (MT) of coupon T-1 finished: none found"));
    CHECK_THAT(each.out, says("  exam 2 is open again\n"));
    CHECK_THAT(each.out, says("exam 1 (VT) of coupon T-1 finished: 1 found"));
    CHECK_THAT(each.out, says("the exam is finished; 'on COUPON' goes to the next, 'undo' opens it"));
    const auto exams = json(run, {"show", "T-1"})["exams"];
    CHECK(exams[0]["found"] == 1);
    CHECK(exams[1]["found"] == 0);
}

TEST_CASE("a coupon is gone to with a method as with a number, and a series of one is that one") {
    const Program run;
    for (const char *mark : {"T-1", "T-2"}) {
        coupon(run, mark);
        for (const char *method : {"VT", "MT"}) exam(run, method, mark);
    }
    const Run r = run({"log", "T-1"}, "on T-2 MT\ncrack 0.2 at 3\non T-2 RT\non T-2 XX\ndone\n", true);
    CHECK_THAT(r.out, says("coupon T-2, open: 1 (VT) and 2 (MT), exam 2 (MT)"));
    CHECK_THAT(r.out, says("no open exam is by that method"));
    CHECK_THAT(r.out, says("'XX' is no number of a find or an exam"));
    CHECK(json(run, {"show", "T-2"})["exams"][1]["indications"].size() == 1);
    CHECK(run({"judge", "T-2..T-2"}).out == run({"judge", "T-2"}).out);
    CHECK(run({"why", "T-2..T-2"}).out == run({"why", "T-2"}).out);
    CHECK_THAT(run({"exam", "T-2..T-2", "PT", "--examiner", "A. Field", "--level", "II"}).out, says("T-2"));
}

TEST_CASE("a method alone is of the lines that follow, on the next coupons too") {
    const Program run;
    for (const char *mark : {"T-1", "T-2"}) {
        coupon(run, mark);
        for (const char *method : {"VT", "MT"}) exam(run, method, mark);
    }
    const Run r = run({"log", "T-1"},
                      "RT\nMT\ncrack 0.2 at 3\nVT pore 0.02 at 1\nall\ncrack 0.3 at 4\nfinish\ncrack 0.1 at "
                      "5\nVT none\nyes\nall\n",
                      true);
    CHECK_THAT(r.out, says("no open exam is by that method"));
    CHECK_THAT(r.out, says("T-1 MT> ") && says("T-2 MT> ") &&
                          says("coupon T-2, open: 1 (VT) and 2 (MT), exam 2 (MT)"));
    CHECK_THAT(r.out, says("exam 2 (MT) of coupon T-2 finished: 1 found"));
    CHECK_THAT(r.out, says("the exam is finished; 'on COUPON'"));
    // What the VT found is not said by a sitting of the MT.
    CHECK_THAT(r.out, says("  coupon T-1 still open: exam 1 (VT); type 'VT finish'\n"));
    for (const char *mark : {"T-1", "T-2"}) {
        const bool first = std::string(mark) == "T-1";
        const auto exams = json(run, {"show", mark})["exams"];
        CHECK(exams[0].contains("found") == !first);
        CHECK(exams[0]["indications"].size() == (first ? 1 : 0));
        CHECK(exams[1]["found"] == 1);
        CHECK(exams[1]["indications"].size() == 1);
    }
    CHECK_THAT(run({"log", "T-1"}, "PT\nVT,MT\npore 0.03 at 2\nall\nall\n", true).out,
               says("no open exam is by that method; type 'VT finish'") && says("T-1 VT,MT> ") &&
                   says("exam 1 (VT) of coupon T-1 finished: 2 found") &&
                   says("no coupon behind T-1 has an open VT or MT") &&
                   says("no exam of coupon T-1 is open"));
}

TEST_CASE("all of one exam alone, where the sitting is of it by its number") {
    const Program run;
    coupon(run);
    for (const char *method : {"VT", "MT"}) exam(run, method);
    CHECK_THAT(run({"log", "T-1", "--exam", "2"}, "crack 0.2 at 3\nall\nall\n", true).out,
               says("exam 2 (MT) of coupon T-1 finished: 1 found\n") &&
                   says("exam 2 (MT) is finished; open: 1 (VT); type 'VT none'") &&
                   !says("exam 1 (VT) of coupon T-1 finished"));
}

TEST_CASE("a find is moved and withdrawn at the prompt, for a reason") {
    const Program run;
    for (const char *mark : {"T-1", "T-2"}) coupon(run, mark);
    for (const char *method : {"VT", "PT"}) exam(run, method);
    exam(run, "PT", "T-2");
    run.ok({"log", "T-1", "PT crack 0.2 at 3"});
    const Run r =
        run({"log", "T-1"},
            "undo 1\nundo 7\nmove 1\nmove 1 VT\nmove 1 RT by film\nmove 1 VT seen by eye\nmove 1 to "
            "T-2 1 films mixed up\nPT pore 0.1 at 5\nwithdraw 2\nwithdraw 2 a scratch\nundo\n",
            true);
    CHECK_THAT(r.out, says("#1 was not logged in this sitting; 'withdraw 1 WHY' takes it back\n") &&
                          says("#7 was not logged in this sitting\n"));
    CHECK_THAT(r.out,
               says("under which exam does it belong? expected its number") && says("^ why? expected"));
    CHECK_THAT(r.out, says("coupon T-1 has no exam by RT"));
    CHECK_THAT(r.out, says("moved from exam 2 of coupon T-1 (#1) to exam 1 of coupon T-1") &&
                          says("moved from exam 1 of coupon T-1 (#1) to exam 1 of coupon T-2"));
    CHECK_THAT(r.out, says("  #2 withdrawn; it stays in the history\n") &&
                          says("the last line withdrew #2: log it again, if it was right; 'undo N'"));
    std::set<std::string> reasons;
    for (const auto &entry : json(run, {"history", "T-1"}))
        if (entry.contains("reason")) reasons.insert(entry["reason"]);
    for (const char *reason : {"seen by eye", "films mixed up", "a scratch"}) CHECK(reasons.contains(reason));
    const auto there = json(run, {"show", "T-2"})["exams"][0]["indications"];
    REQUIRE(there.size() == 1);
    CHECK(there[0]["moved from"]["number"] == 1);
}

TEST_CASE("a stack is worked off at the prompt: all that was found, and on to the next") {
    const Program run;
    for (const char *mark : {"T-1", "T-2", "T-3"}) coupon(run, mark);
    for (const char *mark : {"T-1", "T-3"})
        for (const char *method : {"VT", "MT"}) exam(run, method, mark);
    const Run r = run({"log", "T-1"}, "MT crack 0.2 at 3\nall\nall\nnext\nundo\nundo\n", true);
    CHECK_THAT(
        r.out,
        says(
            "exam 1 (VT) of coupon T-1 finished: none found\nexam 2 (MT) of coupon T-1 finished: 1 found\n"));
    CHECK_THAT(r.out, says("coupon T-3, open: 1 (VT) and 2 (MT)") && !says("coupon T-2, "));
    CHECK_THAT(r.out, says("no coupon behind T-3 has an open exam"));
    // Undone from the last line back, also of the coupon before.
    CHECK_THAT(r.out, says("  exam 1 is open again\n  exam 2 is open again\n"));
    CHECK_THAT(r.out, says("  exam 1 of coupon T-1 is open again\n  exam 2 of coupon T-1 is open again\n"));
    for (const char *mark : {"T-1", "T-3"}) {
        const auto coupon = json(run, {"show", mark});
        for (const auto &exam : coupon["exams"]) CHECK_FALSE(exam.contains("found"));
    }
    CHECK_THAT(run({"log", "T-1"}, "undo\nverdict iso-5817\nverdict nosuch\non\nundo x\n", true).out,
               says("nothing of this sitting is left to undo") && says("  B: ") && says("nosuch") &&
                   says("on which coupon?") && says("'x' is no number of a find"));
}

TEST_CASE("a log that fills several exams names and finishes them") {
    const Program run;
    coupon(run);
    exam(run, "VT");
    exam(run, "MT");
    CHECK_THAT(run.ok({"log", "T-1", "VT pore 0.02 at 1", "MT crack 0.2 at 3"}),
               says("2 indications logged under exams 1 and 2, which are still open"));
    const auto logged = json(run, {"log", "T-1", "VT pore 0.02 at 2", "MT crack 0.2 at 4", "--finish"});
    CHECK(logged["exams"] == nlohmann::json::parse("[1, 2]"));
    CHECK(logged["finished"]["found"] == 4);
}

TEST_CASE("a file that comes twice is taken with --again") {
    const Program run;
    coupon(run);
    exam(run, "RT");
    run.ok({"log", "T-1"}, "pore 0.02 at 1\n");
    const Run r = run({"log", "T-1"}, "pore 0.02 at 1\n");
    CHECK(r.code == 3);
    CHECK_THAT(r.err, says("the same lines are logged already, as #1: give --again\n"));
    run.ok({"log", "T-1", "--again"}, "pore 0.02 at 1\n");
}

TEST_CASE("what is moved is shown by both exams, and in the history with its values") {
    const Program run;
    coupon(run);
    coupon(run, "T-2");
    exam(run, "RT");
    exam(run, "MT");
    exam(run, "RT", "T-2");
    run.ok({"log", "T-1", "RT crack 0.2 at 3", "RT pore 0.02 at 5"});
    const auto moved = json(run, {"move", "T-1", "1", "--exam", "2", "--why", "seen with MT"});
    CHECK(moved["coupon"] == "T-1");
    CHECK(moved["indication"]["exam"] == 2);
    CHECK(moved["indication"]["moved from"]["exam"] == 1);
    CHECK_THAT(run.ok({"move", "T-1", "2", "--to", "T-2", "--why", "films mixed up"}),
               says("moved from exam 1 of coupon T-1 (#2) to exam 1 of coupon T-2"));
    const std::string shown = run.ok({"show", "T-1"});
    CHECK_THAT(shown, says("#1 was moved to exam 2: seen with MT"));
    CHECK_THAT(shown, says("#2 was moved to exam 1 of coupon T-2, #1: films mixed up"));
    CHECK_THAT(shown, says("#1 crack size 0.2 in at 3 in (moved from exam 1: seen with MT)"));
    CHECK_THAT(
        run.ok({"show", "T-2"}),
        says("#1 gas pore size 0.02 in at 5 in (moved from exam 1 of coupon T-1, #2: films mixed up)"));
    const auto away = json(run, {"show", "T-1"})["exams"][0]["moved away"];
    REQUIRE(away.size() == 2);
    CHECK(json(run, {"show", "T-2"})["exams"][0]["indications"][0]["moved from"]["number"] == 2);
    const std::string history = run.ok({"history", "T-1"});
    CHECK_THAT(history, says("exam: 1 -> 2"));
    CHECK_THAT(history, says("moved away  (instead of entry"));
    CHECK_THAT(history, says("moved to: nothing -> coupon T-2, exam 1, #1"));
    CHECK_THAT(run.ok({"verify"}), says(" entries hold. Head: "));
}

TEST_CASE("a coupon is withdrawn and restored") {
    const Program run;
    coupon(run);
    CHECK(run({"withdraw", "T-1", "coupon", "1", "--why", "slip"}).code == 2);
    CHECK(run({"withdraw", "T-1", "exam", "--why", "slip"}).code == 2);
    const auto withdrawn = json(run, {"withdraw", "T-1", "coupon", "--why", "the wrong piece"});
    CHECK(withdrawn["withdrawn"] == "coupon");
    CHECK(withdrawn["why"] == "the wrong piece");
    CHECK_THAT(run.ok({"coupons"}), says("withdrawn"));
    CHECK(json(run, {"coupons"})[0]["withdrawn"] == "the wrong piece");
    CHECK(json(run, {"coupons"})[0]["verdict"] == "withdrawn");
    CHECK_THAT(run.ok({"show", "T-1"}), says("Withdrawn: the wrong piece"));
    CHECK(json(run, {"show", "T-1"})["taken back"] == "the wrong piece");
    CHECK(json(run, {"judge", "T-1"}, 5)["withdrawn"] == "the wrong piece");
    const Run why = run({"why", "T-1"});
    CHECK(why.code == 5);
    CHECK_THAT(why.out, says("The coupon is withdrawn: the wrong piece"));
    CHECK(json(run, {"why", "T-1"}, 5)["verdict"] == "cannot say");
    const Run refused = run({"exam", "T-1", "RT"});
    CHECK(refused.code == 3);
    CHECK_THAT(refused.err, says("mend it with 'beadbook restore T-1 --why"));
    CHECK(json(run, {"restore", "T-1", "--why", "the right one"})["id"] == "T-1");
    exam(run, "RT");
    const auto history = json(run, {"history", "T-1"});
    CHECK(history[1]["changes"][0]["name"] == "taken back");
    CHECK(history[1]["changes"][0]["now"] == "the wrong piece");
    CHECK(history[2]["changes"][0]["before"] == "the wrong piece");
}

TEST_CASE("words without quotes are one line, and what was guessed is told") {
    const Program run;
    run.ok({"register", "T-1", "--thickness", "0.25in", "--form", "tube", "--seam", "girth", "--diameter",
            "2in"});
    run.ok({"exam", "T-1", "VT", "--examiner", "A. Field", "--level", "II"});
    const Run logged = run({"log", "T-1", "und", "0.04", "at", "3:00"});
    CHECK(logged.code == 3);
    CHECK(run.ok({"log", "T-1", "pore", "0.04", "at", "3:00"}).find("#1 gas pore size 0.04 in at 3:00") == 0);
    const Run guessed = run({"log", "T-1", "cra 0.05 at 4:00", "pore 0.03 at 5:00"});
    CHECK(guessed.code == 0);
    CHECK(guessed.err.find("'cra' is taken as crack") != std::string::npos);
    CHECK(run.ok({"show", "T-1"}).find("#3 gas pore") != std::string::npos);
}

TEST_CASE(
    "the prompt helps after a finish too, is left by exit, and names every coupon that it leaves open") {
    const Program run;
    for (const char *mark : {"T-1", "T-2"}) {
        coupon(run, mark);
        exam(run, "VT", mark);
        exam(run, "MT", mark);
    }
    const Run r = run({"log", "T-1"}, "VT none\n?\nhelp\non T-2\nexit\nVT none\n", true);
    std::size_t helps = 0;
    for (std::size_t at = r.out.find("a line is one find"); at != std::string::npos;
         at = r.out.find("a line is one find", at + 1))
        ++helps;
    CHECK(helps == 2);
    CHECK_THAT(r.out,
               says("coupon T-1 still open: exam 2 (MT), coupon T-2 still open: exam 1 (VT) and 2 (MT)"));
}

TEST_CASE("help of log says where twelve o'clock is and which way the hours run") {
    const Program run;
    std::string help = run.ok({"log", "--help"});
    std::replace(help.begin(), help.end(), '\n', ' ');
    CHECK_THAT(help, says("12:00 is the datum"));
    CHECK_THAT(help, says("as the procedure or drawing says"));
    CHECK_THAT(help, says("3/8 long 1/32 deep"));
}

TEST_CASE("a finished exam is opened again at the prompt, for a reason, and what it found more is logged") {
    const Program run;
    for (const char *mark : {"T-1", "T-2"}) coupon(run, mark);
    for (const char *method : {"VT", "MT"}) exam(run, method);
    exam(run, "VT", "T-2");
    run.ok({"finish", "T-2", "--found", "none"});
    const Run r = run({"log", "T-1"},
                      "reopen too early\nVT none\nMT none\nreopen\nreopen one was missed\nreopen MT one was "
                      "missed\ncrack 0.2 at 3\nfinish\nundo\nundo\nundo\non T-2\non T-2 1\npore 0.02 at "
                      "1\nreopen seen under the light\npore 0.02 at 1\nfinish\n",
                      true);
    CHECK_THAT(r.out, says("no exam of coupon T-1 is finished\n") && says("^ why? expected such as: reopen"));
    CHECK_THAT(r.out, says("which exam? finished are 1 (VT) and 2 (MT): type 'reopen 1 WHY'"));
    CHECK_THAT(r.out,
               says("  exam 2 (MT) is open again\n") && says("exam 2 (MT) of coupon T-1 finished: 1 found"));
    CHECK_THAT(r.out, says("the last line opened exam 2 again: finish it, if it was right"));
    CHECK_THAT(
        r.out,
        says("no exam of coupon T-2 is open; finished: 1 (VT), where 'on T-2 1' and then 'reopen WHY'"));
    CHECK_THAT(r.out, says("the exam is finished") && says("'reopen WHY' at any time"));
    CHECK_THAT(r.out, says("exam 1 (VT) of coupon T-2 finished: 1 found"));
    CHECK_THAT(run.ok({"history", "T-1", "--json"}), says("one was missed"));
    CHECK_THAT(run.ok({"history", "T-2", "--json"}), says("seen under the light"));
}

TEST_CASE(
    "after 'VT none' the prompt says what to type next where the exam does not count or another is asked") {
    const Program run;
    run.ok({"register", "T-1", "--criteria", "mil-hdbk-1890-table-3", "--class", "2", "--joint", "groove",
            "--thickness", "0.15in", "--weld-length", "8in", "--material", "steel", "--process", "GTAW"});
    run.ok({"exam", "T-1", "VT", "--examiner", "A. Field", "--level", "II", "--practice", "iso-17637-vt"});
    for (const char *method : {"MT", "RT"}) exam(run, method);
    const Run r = run({"log", "T-1"}, "VT none\nMT none\nPT none\nRT none\nRT none\nverdict\n", true);
    const auto next = [&](const std::string &after) {
        const auto at = r.out.find("next, at the command line", r.out.find(after));
        std::string out = r.out.substr(std::min(at, r.out.size()), 200);
        std::replace(out.begin(), out.end(), '\n', ' ');
        return out;
    };
    // What the exam lacks by its practice, and what the coupon does not say.
    CHECK_THAT(next("exam 1 (VT) of coupon T-1 finished"),
               says("beadbook exam T-1 VT --replaces 1 --found none") && says("distance=..."));
    CHECK_THAT(next("exam 2 (MT) of coupon T-1 finished"), says("beadbook change T-1 --magnetic"));
    CHECK_THAT(r.out, says("no open exam is by that method; type 'RT none'; at the command line 'beadbook "
                           "exam T-1 PT' begins one"));
    CHECK_THAT(r.out, says("the RT is finished: 'reopen RT WHY' opens it again"));
    // Of what counts nothing is asked but what the set asks beside it.
    CHECK_THAT(next("exam 3 (RT) of coupon T-1 finished"), says("beadbook exam T-1 VT --replaces 1"));
}

TEST_CASE(
    "who finishes another's exam and is not on record, and who is without a certificate, are told apart") {
    const Program run;
    for (const char *mark : {"T-1", "T-2"}) coupon(run, mark);
    run.ok({"person", "A. Field", "--role", "technician", "--certificate", "VT II"});
    for (const char *mark : {"T-1", "T-2"})
        run.ok({"exam", mark, "MT", "--examiner", "C. Shore", "--level", "II"});
    const Run unknown = run({"finish", "T-1", "--found", "none", "--by", "Q. Nobody"});
    CHECK(unknown.code == 0);
    CHECK_THAT(unknown.err,
               says("'Q. Nobody' says what the MT by C. Shore found, and is not on record as a person"));
    const Run known = run({"finish", "T-2", "--found", "none", "--by", "A. Field"});
    CHECK(known.code == 3);
    CHECK_THAT(known.err,
               says("the record of the examiner holds no certificate for the method") &&
                   says("mend it with 'beadbook person \"A. Field\" --certificate \"...\" --why \"...\"'"));
    CHECK(run({"finish", "T-2", "--found", "none", "--by", "C. Shore"}).err.empty());
}

TEST_CASE("an exam without an examiner says so when it begins, and the prompt tells what names him") {
    const Program run;
    coupon(run);
    CHECK_THAT(run.ok({"exam", "T-1", "VT,PT"}), says("  they name no examiner"));
    CHECK_THAT(run.ok({"exam", "T-1", "MT"}), says("  it names no examiner"));
    CHECK_THAT(
        run({"log", "T-1"}, "MT none\n", true).out,
        says("who examined? an exam is finished by a named examiner; at the command line: 'beadbook exam "
             "T-1 MT --replaces 3 --examiner \"...\" --why \"...\"'"));
}
