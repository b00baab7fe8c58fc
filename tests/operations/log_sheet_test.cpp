#include "operations/log_sheet.hpp"

#include "booth.hpp"
#include "catch.hpp"
#include "operations/many.hpp"

#include <algorithm>

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// Coupons T-1 to T-4, plates 8 in long.
class SheetBooth : public Booth {
public:
    SheetBooth() {
        write([](Writing &w) {
            return register_coupons(w, {{"T-1", "T-2", "T-3", "T-4"},
                                        {{"weld-length", "8 in"}, {"thickness", "0.25 in"}, {"units", "in"}},
                                        "",
                                        false});
        });
    }
    SheetTaken take(const std::string &text, bool again = false) {
        return write([&](Writing &w) { return take_sheet(w, {text, "sheet", false, again}); }).value;
    }
    std::string refusal_of(const std::string &text) {
        const std::size_t before = office.coupon("T-1").exams.size();
        const std::string out = refusal([&] { take(text); }).what();
        CHECK(office.coupon("T-1").exams.size() == before);
        return out;
    }
};

} // namespace

TEST_CASE("a sheet is exams and finds of many coupons, all finished") {
    SheetBooth booth;
    const auto taken = booth.take("# Monday\n"
                                  "VT, MT; by A. Field; level II; date 2026-11-24; light=1000 lx\n"
                                  "T-1 VT undercut l 3/8 d 0.010 at 1-1/2\n"
                                  "\"   MT crack 0.2 at 3 # beside it\n"
                                  "T-2..T-3 none\n"
                                  "T-4 VT none\n"
                                  "T-4 MT incomplete: the yoke failed\n"
                                  "PT; by B. Quay\n"
                                  "T-4 pore 0.04 at 1\n"
                                  "\" pore 0.05 at 5\n");
    CHECK(taken.parts.size() == 9);
    const CouponState one = booth.office.coupon("T-1"), four = booth.office.coupon("T-4");
    REQUIRE(one.exams.size() == 2);
    CHECK(one.exams[1].method == Exam::MT);
    CHECK(one.exams[1].examiner == "A. Field");
    CHECK(one.exams[1].finished->found == 1);
    CHECK(one.exams[1].conditions.size() == 1);
    CHECK(one.indications.at(1).remark == "beside it");
    REQUIRE(four.exams.size() == 3);
    CHECK(four.exams[1].incomplete == "the yoke failed");
    CHECK(four.exams[2].examiner == "B. Quay");
    CHECK(four.exams[2].level.empty()); // A. Field's says nothing of him
    CHECK(print(four.exams[2].date) == "2026-11-24");
    CHECK(four.exams[2].conditions.empty());
    CHECK(four.exams[2].finished->found == 2);
}

TEST_CASE("an exam that was not complete is said of several coupons and methods at once, or in the head") {
    SheetBooth booth;
    booth.take("VT MT; by A. Field; level II\n"
               "T-1 incomplete: no light\n"
               "T-2 VT none\n"
               "T-2,T-3 MT incomplete: the yoke failed\n"
               "T-3 VT incomplete: no ladder\n"
               "T-3 VT none\n"
               "VT; incomplete: only the root = one side\n"
               "T-4 none\n"
               "VT; by B. Quay\n"
               "T-4 none\n");
    const auto why = [&](const std::string &mark, std::size_t exam) {
        return booth.office.coupon(mark).exams.at(exam).incomplete;
    };
    CHECK(why("T-1", 0) == "no light");
    CHECK(why("T-1", 1) == "no light");
    CHECK(why("T-2", 0).empty());
    CHECK(why("T-2", 1) == "the yoke failed");
    CHECK(why("T-3", 0) == "no ladder");
    CHECK(why("T-3", 1) == "the yoke failed");
    CHECK(why("T-4", 0) == "only the root = one side");
    CHECK(why("T-4", 1).empty());
    CHECK_THAT(booth.refusal_of("VT; by A\nT-1 incomplete: dark\nT-1 incomplete: wet"),
               says("it is said already why it was not complete: dark"));
    CHECK_THAT(booth.refusal_of("VT; by A; incomplete:\nT-1 none"), says("why was it not complete?"));
    CHECK_THAT(booth.refusal_of("VT; by A; incomplete: dark; incomplete: wet\nT-1 none"), says("twice"));
}

TEST_CASE("what is noted of some coupons of a sheet names them") {
    SheetBooth booth;
    booth.write([](Writing &w) { return change_coupon(w, {{"T-4", {{"magnetic", "yes"}}}, {}, "tried"}); });
    const auto notes =
        booth
            .write([&](Writing &w) {
                return take_sheet(w, {"MT; by A. Field; level II\nT-1..T-4 none", "sheet", false, false});
            })
            .notes;
    CHECK(std::find(notes.begin(), notes.end(),
                    "T-1 to T-3: MT counts once the coupon says that it is magnetic (magnetic: yes)") !=
          notes.end());
}

TEST_CASE("a head names a practice of all its methods, or one of a single method in its place") {
    SheetBooth booth;
    booth.take("VT MT; by A. Field; level II; practice VT iso-17637-vt; practice MT astm-e1444-mt\nT-1 none\n"
               "VT; practice asme-v-vt\nT-2 none\n"
               "VT MT; practice MT astm-e1444-mt\nT-3 none\n");
    const auto practices = [&](const std::string &mark) {
        std::string out;
        for (const auto &exam : booth.office.coupon(mark).exams)
            out += std::string(name_of(exam.method)) + " " +
                   (exam.practice.empty() ? "none" : exam.practice) + "; ";
        return out;
    };
    CHECK(practices("T-1") == "VT iso-17637-vt; MT astm-e1444-mt; ");
    CHECK(practices("T-2") == "VT asme-v-vt; ");
    CHECK(practices("T-3") == "VT none; MT astm-e1444-mt; ");
}

TEST_CASE("what a method found must be said of each coupon: silence is no 'none'") {
    SheetBooth booth;
    CHECK_THAT(booth.refusal_of("VT MT; by A\nT-1 VT crack 0.2 at 3\nT-2 none"),
               says("sheet:2: T-1: what did MT find? say 'T-1 MT none', or its finds"));
}

TEST_CASE("every bad line of a sheet is named, with its column, and nothing is stored") {
    SheetBooth booth;
    const std::string all = booth.refusal_of("VT; by A. Field\n"
                                             "T-1 pore 0.0x at 3\n"
                                             "T-9 none\n"
                                             "T-2\n"
                                             "T-2..T-3 pore 0.04 at 1\n"
                                             "T-4 none\n"
                                             "T-4 crack 0.1 at 1\n"
                                             "MT; bz\n"
                                             "T-1 PT none\n");
    for (const char *fault :
         {"sheet:2:15: ", "sheet:3: there is no coupon 'T-9'", "sheet:4: what did it find?",
          "sheet:5: a find is of one coupon", "sheet:7: it is said to have found none",
          "sheet:8: 'bz' is not understood", "sheet:9: "}) {
        INFO(fault);
        CHECK_THAT(all, says(fault));
    }
    CHECK_THAT(booth.refusal_of("T-1 none"), says("no exam is named yet"));
    CHECK_THAT(booth.refusal_of("VT; by A\n\" none"), says("none is named yet"));
    CHECK_THAT(booth.refusal_of("VT MT; by A\nT-1 crack 0.1 at 1"), says("by which method?"));
    CHECK_THAT(booth.refusal_of("# nothing"), says("names no exam"));
    CHECK_THAT(booth.refusal_of("VT; level II\nT-1 none"), says("examiner"));
}

TEST_CASE("a remark of a sheet that hides a head, a find or what was found is refused") {
    SheetBooth booth;
    for (const char *hidden :
         {"# T-1 VT crack 0.5 at 2", "# T-1..T-2 none", "## \" VT none", "# T-1 incomplete: fogged",
          "# MT; by A. Field", "# MT by A. Field", "# crack 0.5 at 2", "#4 crack 0.5 at 2", "# MT crack"}) {
        INFO(hidden);
        CHECK_THAT(booth.refusal_of("VT; by A. Field\nT-3 VT none\n" + std::string(hidden)),
                   says("sheet:3: a remark that reads like "));
    }
    CHECK_THAT(booth.refusal_of("VT; by A. Field\nT-1 none # crack 0.5 at 2"),
               says("sheet:2: a remark that reads like a find"));
    booth.take("# T-1 was warm\n# VT was done first\n# T-1\n# 24 November\n# T-1 VT\n"
               "VT; by A. Field\n# cracks were looked for\nT-3 none # by daylight\n");
}

TEST_CASE("blanks and tabs stand between coupons and within a line as it is written") {
    SheetBooth booth;
    const auto taken = booth.take("VT; by A. Field; level II\n"
                                  "T-1, T-2 ,T-3 none # all clean\n"
                                  "T-4,\tpore\t.05\tat\t3\n");
    CHECK(taken.parts.size() == 4);
    CHECK(booth.office.coupon("T-3").exams.at(0).note == "all clean");
    CHECK(print_log_line(booth.office.coupon("T-4").indications.at(0)) == "gas pore size .05 in at 3 in");
}

TEST_CASE("a sheet goes on with an exam of that method, day and person that is open") {
    SheetBooth booth;
    ExamRequest exam;
    exam.coupon = "T-1";
    exam.examiner = "A. Field";
    exam.procedure = "P-1";
    booth.write([&](Writing &w) { return record_exam(w, exam); });
    booth.take("VT; by A. Field; light=1000 lx\nT-1 pore .05 at 3\n");
    const CouponState after = booth.office.coupon("T-1");
    REQUIRE(after.exams.size() == 1);
    CHECK(after.exams.at(0).procedure == "P-1");
    CHECK(after.exams.at(0).conditions.at("light") == "1000 lx");
    REQUIRE(after.exams.at(0).finished);
    CHECK(after.exams.at(0).finished->found == 1);
}

TEST_CASE("of two exams that are open a sheet asks which is meant") {
    SheetBooth booth;
    ExamRequest exam;
    exam.coupon = "T-1";
    exam.examiner = "A. Field";
    for (int i = 0; i < 2; ++i) booth.write([&](Writing &w) { return record_exam(w, exam); });
    CHECK_THAT(booth.refusal_of("VT; by A. Field\nT-1 none\n"),
               says("they are open: which is meant? log under that one what it found, and finish it"));
    booth.take("VT; by A. Field\nT-1 none\n", true);
    CHECK(booth.office.coupon("T-1").exams.size() == 3);
}

TEST_CASE("a sheet says none of no open exam under which something is on record") {
    SheetBooth booth;
    ExamRequest exam;
    exam.coupon = "T-1";
    exam.examiner = "A. Field";
    booth.write([&](Writing &w) { return record_exam(w, exam); });
    booth.write([](Writing &w) { return log_lines(w, {"T-1", 1, "pore .05 at 3"}); });
    CHECK_THAT(booth.refusal_of("VT; by A. Field\nT-1 none\n"), says("said to have found 0"));
}

TEST_CASE("the same sheet twice is noticed") {
    SheetBooth booth;
    const std::string text = "VT; by A. Field\nT-1 none\n";
    booth.take(text);
    const Refusal twice = booth.refusal([&] { booth.take(text); });
    CHECK_THAT(twice.what(), says("by A. Field already"));
    CHECK(twice.field() == "again");
    booth.take(text, true);
    CHECK(booth.office.coupon("T-1").exams.size() == 2);
    booth.take("VT; by B. Quay\nT-1 none\n"); // somebody else's
    CHECK(booth.office.coupon("T-1").exams.size() == 3);
}

TEST_CASE("what nobody would believe is asked of the whole sheet at once") {
    SheetBooth booth;
    const Refusal e =
        booth.refusal([&] { booth.take("VT; by A. Field\nT-1 crack 0.1 d 3 at 1\nT-2 crack 0.1 d 4 at 1"); });
    CHECK(e.field() == "sure");
    CHECK_THAT(e.what(), says("sheet:2:"));
    CHECK_THAT(e.what(), says("sheet:3:"));
}

TEST_CASE("a head that is not written as one is refused once, and the lines below it are not read") {
    SheetBooth booth;
    const auto only = [&](const std::string &text, const std::string &fault) {
        const std::string all = booth.refusal_of(text);
        INFO(all);
        CHECK(all == "1 line of the sheet cannot be taken, nothing was stored:\nsheet:1: " + fault);
    };
    const std::string below = "\nT-1 none\nT-2 VT crakc 0.1\n";
    only("VT UT; by A. Field" + below, "'UT' is no exam; expected VT, MT, PT or RT");
    const std::string write = "blanks part the methods of a head, and a semicolon stands behind them: write ";
    only("VT/PT; by A. Field" + below, write + "'VT PT; by A. Field'");
    only("VT+PT" + below, write + "'VT PT'");
    only("VT and PT; by A. Field" + below, write + "'VT PT; by A. Field'");
    only("VT PT by A. Field level II light=1000 lx" + below,
         write + "'VT PT; by A. Field; level II; light=1000 lx'");
    only("T-1 none" + below, "no exam is named yet; expected a line such as 'VT MT; by A. Field; level II'");
    // The next head is read again.
    CHECK_THAT(booth.refusal_of("VT UT" + below + "VT; by A. Field\nT-1 crakc 0.1\n"),
               says("2 lines of the sheet") && says("sheet:5:5: 'crakc'") && !says("sheet:3"));
}

TEST_CASE(
    "a key of a head is no condition: with '=' it is refused, and what it says is not taken from the head "
    "above") {
    SheetBooth booth;
    const std::string all = booth.refusal_of("VT; by A. Field; date 2026-11-20\nT-2 none\n"
                                             "VT; by=B. Shore; date=2026-11-21; equipment=LM-7; note=x\n"
                                             "T-3..T-4 none\n");
    CHECK_THAT(all, says("1 line of the sheet"));
    for (const char *fault :
         {"sheet:3: 'by=B. Shore': 'by' is no condition and has no '='; write 'by B. Shore'",
          "write 'date 2026-11-21'", "write 'with LM-7'", "write 'note x'"})
        CHECK_THAT(all, says(fault));
    CHECK(booth.office.coupon("T-3").exams.empty());
}

TEST_CASE("mistakes of a sheet are counted by lines, and each is said once, not for each method") {
    SheetBooth booth;
    const std::string all = booth.refusal_of("VT MT PT; by A. Field\nX-1..X-2 none\n");
    CHECK_THAT(all, says("1 line of the sheet") && says("'X-1'") && says("'X-2'"));
    CHECK(std::count(all.begin(), all.end(), '\n') == 2);
    CHECK_THAT(booth.refusal_of("VT MT; level II\nT-1..T-3 none\n"),
               says("1 line of the sheet cannot be taken, nothing was stored:\nsheet:1: who examined?"));
}

TEST_CASE("a remark behind none is the note of its exams, beside that of the head") {
    SheetBooth booth;
    booth.take("VT MT; by A. Field; note cold shop\nT-1 none # all fine\nVT; by A. Field\nT-2 NONE\n");
    const CouponState one = booth.office.coupon("T-1"), two = booth.office.coupon("T-2");
    REQUIRE(one.exams.size() == 2);
    for (const auto &exam : one.exams) CHECK(exam.note == "cold shop; all fine");
    CHECK(two.exams.at(0).note.empty());
    CHECK(two.exams[0].finished->found == 0);
}
