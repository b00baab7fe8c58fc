// What was typed at the prompt and refused: nothing is finished without it unasked.
#include "catch.hpp"
#include "cli/json.hpp"

using namespace beadbook::test;

namespace {

constexpr const char *asks = "; is the exam finished without it?";

struct Sitting {
    std::string said;
    std::string finished; ///< a 1 or 0 each: of G-1 the VT and the PT, of G-7 the same
    std::size_t asked() const {
        std::size_t out = 0;
        for (auto at = said.find(asks); at != said.npos; at = said.find(asks, at + 1)) ++out;
        return out;
    }
    bool any_finished() const { return finished.find('1') != finished.npos; }
};

/// The lines at the prompt of G-1, of which VT and PT are open, as of G-7.
Sitting sitting(const std::string &lines) {
    const Program run;
    run.ok({"register",   "G-1",        "--criteria",  "ufgs-15216n", "--joint",
            "groove",     "--form",     "tube",        "--seam",      "girth",
            "--diameter", "2in",        "--thickness", "0.125in",     "--weld-thickness",
            "full",       "--magnetic", "yes",         "--material",  "carbon steel"});
    run.ok({"register", "G-7", "--like", "G-1"});
    run.ok({"exam", "G-1,G-7", "VT,PT", "--examiner", "A. Field", "--level", "II"});
    Sitting out;
    out.said = run({"log", "G-1"}, lines, true).out;
    for (const char *mark : {"G-1", "G-7"})
        for (const nlohmann::json exams = json(run, {"show", mark})["exams"]; const auto &exam : exams)
            out.finished += exam.contains("found") ? '1' : '0';
    return out;
}

} // namespace

TEST_CASE("a correction that the prompt refused is asked about", "[prompt]") {
    for (const char *line : {"correct 1 ri .2O 3:00", "correct 1 li .2 3:00 to", "correct 2 ri .2 3:00",
                             "correct ri .2 3:00", "corect 1 ri .2 3:00", "correct 1 ri .2 13:00"}) {
        INFO(line);
        const auto refused = sitting("PT ri .02 3:00\n" + std::string(line) + "\nall\n");
        CHECK_THAT(refused.said, says("'" + std::string(line) + "' was not "));
        CHECK(refused.asked() == 1);
        CHECK_FALSE(refused.any_finished());
        CHECK(sitting("PT ri .02 3:00\n" + std::string(line) + "\nall\nyes\n").finished[1] == '1');
    }
    for (const char *mended :
         {"correct 1 ri .2O 3:00\ncorrect 1 ri .2 3:00", "correct ri .2 3:00\ncorrect 1 ri .2 3:00",
          "corect 1 ri .2O 3:00\ncorrect 1 ri .2 3:00"}) {
        INFO(mended);
        CHECK(sitting("PT ri .02 3:00\n" + std::string(mended) + "\nall\n").asked() == 0);
    }
}

TEST_CASE("a correction that is refused shows its mistake under the word", "[prompt]") {
    const std::string line = "correct 1 ri .2O 3:00";
    const auto said = sitting("PT ri .02 3:00\n" + line + "\n").said;
    CHECK_THAT(said, says("G-1> " + std::string(5 + line.find("O 3"), ' ') + "^ 'O' in '.2O'"));
    CHECK_THAT(said, !says("cannot be taken"));
}

TEST_CASE("one find that is logged stands for one refused line, of its type and place", "[prompt]") {
    const std::pair<const char *, std::size_t> cases[] = {
        // Another place, another type, two for one, another of the two.
        {"VT undercut l .3 d .O40 3:00\nVT undercut l .3 d .004 9:00\nall\n", 1},
        {"VT crak .2 3:00\nVT undercut l .3 d .004 3:00\nall\n", 1},
        {"VT undercut l .3 d .O40 3:00\nVT undercut l .3 d .O04 6:00\nVT undercut l .3 d .004 6:00\nall\n",
         1},
        {"VT undercut l .3 d .O40 sharp 3:00\nVT undercut l .3 d .004 smooth 6:00\nall\n", 1},
        {"VT undercut l .3 d .O40 sharp 3:00\nVT undercut l .3 d .004 smooth 3:00\nall\n", 1},
        {"VT undercut l .3 d .O40 root 3:00\nVT undercut l .3 d .004 face 3:00\nall\n", 1},
        {"VT crak .2 3:00\nPT crack .2 3:00\nall\n", 1},
        {"VT crak .2\nVT crack .2 3:00\nall\n", 1},
        // What was mended.
        {"VT undercut l .3 d .O40 3:00\nVT undercut l .3 d .040 3:00\nall\n", 0},
        {"VT crak .2 3:00\nVT crack .2 3:00\nall\n", 0},
        {"VT crak .2 , 3:00 , sharp\nVT crack .2 3:00\nall\n", 0},
        {"VT crak .2 3:00\nVT crak .2 3:00\nVT crack .2 3:00\nall\n", 0},
        {"VT crakc .2 3:00\nVT crater crack .2 3:00\nall\n", 0},
        {"crack .2 3:00\nVT crack .2 3:00\nall\n", 0},
        {"VT crack .2 3:O0\nVT crack .2 3:00\nall\n", 0},
        {"VT crack .2 at 3\nVT crack .2 at 3:00\nall\n", 0},
        {"VT crack .2 at 3\nVT crack .2 at 3 in\nall\n", 0},
        {"VT toe crack .2 3:00\nVT crack .2 3:00 # toe\nall\n", 0},
        {"VT cold lap .2 3:00\nVT overlap .2 3:00\nall\n", 0},
        {"VT crack .2 3:00 to\nVT crack .2 3:00 to 3:10\nall\n", 0},
        {"VT crak .2\nVT crack .2\nall\n", 0},
    };
    for (const auto &[lines, asked] : cases) {
        INFO(lines);
        const auto one = sitting(lines);
        CHECK(one.asked() == asked);
        CHECK(one.any_finished() == (asked == 0));
    }
}

TEST_CASE("a refused find is asked about though its method is finished, or not open", "[prompt]") {
    for (const char *line : {"VT crak .2 3:00", "VT crack .2 3:00"}) {
        INFO(line);
        const auto one = sitting("VT none\n" + std::string(line) + "\nPT none\n");
        CHECK_THAT(one.said, says("'" + std::string(line) + "' was not logged"));
        CHECK(one.finished[1] == '0');
        CHECK(sitting("VT none\n" + std::string(line) + "\nPT none\nyes\n").finished[1] == '1');
    }
    const auto mt = sitting("MT crack .2 3:00\nall\n");
    CHECK(mt.asked() == 1);
    CHECK_FALSE(mt.any_finished());
}

TEST_CASE("a refused word that goes elsewhere is asked about before either is finished", "[prompt]") {
    for (const char *lines :
         {"on G-1O\nVT none\n", "MT\nVT none\n", "PT li .2 3:00\nmove 1 to G7 wrong coupon\non G-7\nall\n",
          "PT li .2 3:00\nmove 1 to G7 wrong coupon\nall\n", "PT li .2 3:00\nmove l to G-7 wrong\nall\n",
          // A find went where it was not meant before the coupon was reached.
          "on G7\nVT crack .2 3:00\non G-7\nVT none\n"}) {
        INFO(lines);
        const auto one = sitting(lines);
        CHECK_THAT(one.said, says("' was not taken; is the exam finished without it?"));
        CHECK_FALSE(one.any_finished());
    }
    // Answered for the one coupon, it is asked on the one that was meant.
    const auto both = sitting("PT li .2 3:00\nmove 1 to G7 wrong coupon\nall\nyes\nall\nno\n");
    CHECK(both.asked() == 2);
    CHECK(both.finished == "1100");
    for (const char *lines : {"on G7\non G-7\nVT none\n", "MT\nVT\nnone\n",
                              "PT li .2 3:00\nmove 1 to G7 wrong\nmove 1 to G-7 wrong\nall\n"}) {
        INFO(lines);
        const auto one = sitting(lines);
        CHECK(one.asked() == 0);
        CHECK(one.any_finished());
    }
}

TEST_CASE("who leaves the prompt is told what was not logged", "[prompt]") {
    for (const char *end : {"done\n", ""}) {
        const auto one = sitting("PT crak .2 3:00\nVT pore .02 6:00\n" + std::string(end));
        CHECK_THAT(one.said, says("1 indication logged, coupon G-1 still open: exam 1 (VT) and 2 (PT)\n"
                                  "'PT crak .2 3:00' of coupon G-1 was not logged\n"));
    }
    CHECK_THAT(sitting("VT none\nPT none\nPT crak .2 3:00\ndone\n").said,
               says("'PT crak .2 3:00' of coupon G-1 was not logged\n"));
    CHECK_THAT(sitting("PT crak .2 3:00\nPT none\nyes\nVT none\ndone\n").said,
               !says("' of coupon G-1 was not"));
    CHECK_THAT(sitting("on G7\non G-7\ndone\n").said, !says("was not"));
}

TEST_CASE("a crack, or what may be one, is told beside the accept by undo and withdraw alike", "[prompt]") {
    for (const char *find : {"crack", "li"})
        for (const char *back : {"undo", "withdraw 1 dirt"}) {
            INFO(find << " " << back);
            const auto one = sitting("PT " + std::string(find) + " l .2 3:00\n" + back + "\nall\n");
            CHECK_THAT(one.said, says("accept; with cautions"));
        }
    CHECK_THAT(sitting("PT pore .2 3:00\nundo\nall\n").said, says("accept") && !says("with cautions"));
}

TEST_CASE("a comment and a slip of a word of the prompt hide no find; a refused remark behind none may",
          "[prompt]") {
    for (const char *line : {"# cleaned again, better light", "udno", "lits", "udno 1", "none # gauge G-3"}) {
        INFO(line);
        const auto one = sitting("PT\n" + std::string(line) + "\nundo\nPT none\n");
        CHECK(one.asked() == 0);
        CHECK(one.any_finished());
    }
    CHECK_THAT(sitting("# better light\n").said, says("a comment, which is kept nowhere"));
    for (const char *line : {"# 0.2 at 3:00", "#crack .2 3:00", "PT none # crk at 3", "none # except at 3:00",
                             "lin", "udno .2", "lits 3:00"}) {
        INFO(line);
        const auto one = sitting("PT\n" + std::string(line) + "\nPT none\n");
        CHECK(one.asked() == 1);
        CHECK_FALSE(one.any_finished());
    }
}

TEST_CASE("a remark behind none is kept with the exam, at the prompt and of a file", "[prompt]") {
    const Program run;
    run.ok({"register",   "G-1",        "--criteria",  "ufgs-15216n", "--joint",
            "groove",     "--form",     "tube",        "--seam",      "girth",
            "--diameter", "2in",        "--thickness", "0.125in",     "--weld-thickness",
            "full",       "--magnetic", "yes",         "--material",  "carbon steel"});
    run.ok({"exam", "G-1", "VT,PT", "--examiner", "A. Field", "--level", "II", "--note", "as asked"});
    run({"log", "G-1"}, "PT none # clean, light good\n", true);
    run.ok({"log", "G-1", "--file", "-"}, "VT none # face and root\n");
    const auto exams = json(run, {"show", "G-1"})["exams"];
    CHECK(exams[0]["note"] == "as asked; face and root");
    CHECK(exams[1]["note"] == "as asked; clean, light good");
    CHECK(exams[1]["found"] == 0);
}

TEST_CASE("where several exams are open the prompt names the method of each find", "[prompt]") {
    const auto said = sitting("PT ri .02 3:00\nVT pore .03 at 4:00\nlist\n").said;
    CHECK_THAT(said, says("#1 PT rounded indication"));
    CHECK_THAT(said, says("#2 VT gas pore"));
    CHECK(said.find("#1 PT rounded indication") != said.rfind("#1 PT rounded indication"));
}

TEST_CASE("behind none an indication is asked about at the prompt, whichever exam is open", "[prompt]") {
    for (const char *line : {"VT none # indication at stop", "PT none # 2 indications, see photo"}) {
        INFO(line);
        const auto refused = sitting(std::string(line) + "\n");
        CHECK_THAT(refused.said, says("behind none a remark that speaks of 'indication"));
        CHECK_FALSE(refused.any_finished());
    }
}

TEST_CASE("who names nobody is told at the start what he may not do there", "[prompt]") {
    const Program run;
    run.ok({"register", "T-1", "--criteria", "mil-std-2219a", "--thickness", "0.05in"});
    run.ok({"exam", "T-1", "VT", "--examiner", "A. Field", "--level", "II"});
    const std::string told = "names nobody who can be asked: finds are logged, but not corrected";
    CHECK_THAT(run({"log", "T-1", "--by", "x"}, "done\n", true).out, says("'x' " + told));
    CHECK_THAT(run({"log", "T-1", "--by", "A. Field"}, "done\n", true).out, !says(told));
}
