// What comes in is believed, asked about or refused: units, printed lines, methods, files that come twice.
#include "booth.hpp"
#include "catch.hpp"
#include "operations/exported.hpp"
#include "operations/looking.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

Done<Logged> log_with(Booth &booth, LogRequest request) {
    return booth.write([&](Writing &w) { return log_lines(w, request); });
}

LogRequest file_of_lines(const std::string &text, int exam = 0) {
    LogRequest out{"T-1", exam, text, "finds.txt"};
    out.is_file = true;
    return out;
}

Imported imported(Booth &booth, const ImportRequest &request) {
    auto prepared = prepare_import(booth.office, request);
    return booth.write([&](Writing &w) { return store_import(w, std::move(prepared)); }).value;
}

std::string exchange(const std::string &coupon) {
    return R"({"format": "beadbook exchange", "version": 1, "coupons": [)" + coupon + "]}";
}

} // namespace

TEST_CASE("what nobody would believe is refused, and kept as sure once a person says so") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.exam(Exam::VT);
    const std::string text = "pore 0.04 at 1\ncrack l 0.2 d 5 at 3\npore 300\n";
    LogRequest request{"T-1", 4, text, "finds.txt"};
    const Refusal refusal = booth.refusal([&] { log_with(booth, request); });
    CHECK(field_of(refusal) == "give sure");
    CHECK_THAT(refusal.what(), says("finds.txt:2: is that meant? depth 5 in, thicker member 0.15 in"));
    CHECK_THAT(refusal.what(), says("finds.txt:3: is that meant? size 300 in, weld length 8 in"));
    request.sure = true;
    const auto found = log_with(booth, request).value.indications;
    CHECK(found[0].sure.empty());
    CHECK(found[1].sure == std::vector<std::string>{"depth-over-wall"});
    CHECK(booth.office.coupon("T-1").needed_indication(2).sure == found[1].sure);
    const auto assured = booth.office.coupon("T-1").assurances();
    REQUIRE(assured.size() == 2);
    CHECK(assured[0].number == 2);
    CHECK(explain(booth.office, "T-1").judged.sure.size() == 2);
    // A correction is asked anew: it is another number.
    CHECK(field_of(booth.refusal([&] {
              booth.write(
                  [](Writing &w) { return correct_indication(w, "T-1", 2, "crack l 0.2 d 4 at 3", "slip"); });
          })) == "give sure");
    booth.write([](Writing &w) { return correct_indication(w, "T-1", 2, "crack l 0.2 d 0.1 at 3", "slip"); });
    CHECK(booth.office.coupon("T-1").needed_indication(2).sure.empty());
}

TEST_CASE("a coupon's numbers are asked about once, and again when they change") {
    Booth booth;
    const Booth::Fields odd{{"criteria", "iso-5817"}, {"thickness", "10 in"}};
    CHECK(field_of(booth.refusal([&] { booth.put("T-9", odd); })) == "give sure");
    booth.write([&](Writing &w) { return register_coupon(w, {"T-9", odd, true}); });
    CHECK(booth.office.coupon("T-9").record.sure == std::vector<std::string>{"wall-too-thick"});
    const auto change = [&](const Booth::Fields &fields) {
        booth.write([&](Writing &w) { return change_coupon(w, {{"T-9", fields}, {}, "slip"}); });
    };
    change({{"note", "a slab"}});
    CHECK(field_of(booth.refusal([&] { change({{"thickness", "11 in"}}); })) == "give sure");
    change({{"thickness", "1 in"}});
    CHECK(booth.office.coupon("T-9").record.sure.empty());
}

TEST_CASE("an import sets aside what the file names as sure, or all of it when asked to") {
    Booth booth;
    const auto text = [](const std::string &sure) {
        return exchange(R"({"id": "N", "fields": {"thickness": "0.15 in"}, "exams": [
            {"method": "VT", "date": "2026-11-20", "indications": [
                {"type": "crack", "depth": "5 in")" +
                        sure + "}]}]}");
    };
    const Refusal refusal = booth.refusal([&] { imported(booth, {{}, text("")}); });
    CHECK_THAT(refusal.what(), says("depth 5 in, thicker member 0.15 in"));
    CHECK(field_of(refusal) == "give sure");
    CHECK_THAT(booth.refusal([&] {
                        imported(booth, {{}, text(R"(, "sure": ["size-over-weld"])")});
                    })
                   .what(),
               says("(depth-over-wall)"));
    CHECK_THAT(booth.refusal([&] {
                        imported(booth, {{}, text(R"(, "sure": [1])")});
                    })
                   .what(),
               says("sure: expected text, found 1"));
    imported(booth, {{}, text(R"(, "sure": ["depth-over-wall"])")});
    CHECK(booth.office.coupon("N").needed_indication(1).sure == std::vector<std::string>{"depth-over-wall"});
    // What was said travels with the finds, as JSON and as tables.
    const std::string json = exported(booth.office, {}).text;
    Booth other, sheets;
    imported(other, {{}, json});
    CHECK(exported(other.office, {}).text == json);
    for (const Sheet sheet : {Sheet::coupons, Sheet::exams, Sheet::indications})
        imported(sheets, {sheet, exported(booth.office, sheet).text});
    CHECK(exported(sheets.office, {}).text == json);
    Booth all;
    imported(all, {{}, text(""), true});
    CHECK(all.office.coupon("N").needed_indication(1).sure == std::vector<std::string>{"depth-over-wall"});
}

TEST_CASE("the unit of bare numbers is what the coupon says, or what all its sizes are written in") {
    const auto unit_of = [](const std::map<std::string, std::string> &fields) {
        CouponRecord coupon;
        coupon.set_all(fields);
        return coupon.fixed_unit();
    };
    CHECK_FALSE(unit_of({}));
    CHECK_FALSE(unit_of({{"temperature", "350 F"}, {"layers", "3"}}));
    CHECK(unit_of({{"thickness", "3 mm"}}) == Unit::millimetre);
    CHECK(unit_of({{"thickness", "3/16\""}, {"diameter", "2in"}}) == Unit::inch);
    CHECK_FALSE(unit_of({{"thickness", "3 mm"}, {"diameter", "2in"}}));
    CHECK(unit_of({{"thickness", "3 mm"}, {"diameter", "2in"}, {"units", "in"}}) == Unit::inch);
    // Bare ones follow those that are written with their unit, in whichever order they are given.
    CouponRecord coupon;
    coupon.set_all({{"diameter", "60"}, {"thickness", "3 mm"}});
    CHECK(coupon.get("diameter") == "60 mm");
    CHECK_THROWS_WITH(CouponRecord().set("thickness", "3"), says("3 in or 3 mm?"));

    Booth booth;
    booth.put("T-1", {{"criteria", "iso-5817"}, {"joint", "groove"}});
    booth.exam(Exam::VT);
    CHECK_THAT(booth.refusal([&] { booth.log("pore 0.2 at 10 mm"); }).what(), says("0.2 in or 0.2 mm?"));
    CHECK_THAT(booth.refusal([&] { booth.log("pore area 0.2"); }).what(), says("0.2 in2 or 0.2 mm2?"));
    const auto found = booth.log("pore 0.2 mm at 1 in").value.indications;
    CHECK(print_log_line(found[0]) == "gas pore size 0.2 mm at 1 in");
}

TEST_CASE("a whole number round a tube is a distance or an hour") {
    Booth booth;
    booth.coupon("T-1", {{"seam", "girth"}, {"weld-length", ""}});
    booth.exams();
    for (const char *place : {"at 6", "mid 6", "from 6 to 6.25", "from 5.25 to 6"}) {
        const Refusal refusal = booth.refusal([&] { booth.log(std::string("crack ") + place); });
        CHECK_THAT(refusal.what(),
                   says("6 in or 6 o'clock (3.1416 in from the datum)? write '6 in' or '6:00'"));
    }
    CHECK_THAT(booth.refusal([&] { booth.log("crack at 12"); }).what(),
               says("12 o'clock (0 in from the datum)"));
    for (const char *place : {"at 6:00", "at 6 in", "at 6 o'clock", "at 6.0", "at 5-1/2", "at 0", "at 6 mm"})
        CHECK_NOTHROW(booth.log(std::string("crack l 0.1 ") + place));
    CHECK_THAT(booth.refusal([&] { booth.log("crack at 13"); }).what(), says("off the weld"));
    booth.coupon("T-2"); // a straight one has no hours
    booth.exams("T-2");
    CHECK_NOTHROW(booth.log("crack l 0.1 at 6", "T-2"));
}

TEST_CASE("a line as the program prints it is that find, and never a comment") {
    Booth booth;
    booth.coupon();
    booth.exams();
    const Logged first =
        booth.log("pore 0.02 at 1\n#4 crack 0.5 at 3\n# copied\n#remark\npore 0.02 at 5").value;
    REQUIRE(first.indications.size() == 3);
    CHECK(first.indications[1].number == 4);
    CHECK(first.indications[0].number == 5); // without a number: after all that are given
    CHECK(first.indications[2].number == 6);
    CHECK_THAT(booth.refusal([&] { booth.log("#4 crack 0.5 at 3"); }).what(),
               says("find #4 stands already: crack size 0.5 in at 3 in"));
    CHECK_THAT(booth.refusal([&] { booth.log("#2 crack 0.5 at 3"); }).what(),
               says("has used indication number 2 already"));
    CHECK_THAT(booth.refusal([&] { booth.log("#8 crack 0.5 at 3\n#8 crack 0.4 at 3"); }).what(),
               says("line:2: indication number 8 of coupon T-1 stands twice"));
    CHECK_THAT(booth.refusal([&] { booth.log("#4x crack 0.5"); }).what(), says("is no number of a find"));
    CHECK_THAT(booth.refusal([&] { booth.log("pore 0.02 at 1 #2 crack 0.5 at 3"); }).what(),
               says("a digit right behind # is the number of a find"));
    CHECK(booth.log("pore 0.02 at 2 # 2 ground beside").value.indications[0].remark == "2 ground beside");
    // A correction may be given as it was printed, but not of another find.
    booth.write([](Writing &w) { return correct_indication(w, "T-1", 4, "#4 crack 0.4 at 3", "slip"); });
    CHECK_THAT(booth
                   .refusal([&] {
                       booth.write([](Writing &w) {
                           return correct_indication(w, "T-1", 4, "#5 crack 0.4 at 3", "slip");
                       });
                   })
                   .what(),
               says("the line is of #5, not of #4"));
}

TEST_CASE("lines name their method, so that one text fills several exams") {
    Booth booth;
    booth.coupon();
    booth.exam(Exam::VT);
    booth.exam(Exam::MT);
    const Logged logged =
        booth.log("MT crack 0.2 at 3\nVT undercut l 0.3 d 0.01 at 1 smooth\n#7 mt crack 0.1 at 5").value;
    CHECK(logged.exams() == std::vector<int>{1, 2});
    CHECK(logged.exam == 2);
    CHECK(logged.indications[1].exam == 1);
    CHECK(logged.indications[2].number == 7);
    CHECK(logged.indications[2].exam == 2);
    const Refusal unclear = booth.refusal([&] { booth.log("MT crack 0.2 at 3\npore 0.02 at 1"); });
    CHECK_THAT(unclear.what(), says("line:2: which exam found it? coupon T-1 has open: 1 (VT) and 2 (MT)"));
    CHECK(field_of(unclear) == "give exam");
    CHECK_THAT(booth.refusal([&] { booth.log("RT crack 0.2 at 3"); }).what(),
               says("no RT of coupon T-1 is open; open are 1 (VT) and 2 (MT)"));
    CHECK_THAT(booth.refusal([&] { booth.log("VT pore 0.02 at 1", "T-1", 2); }).what(),
               says("the line says VT, and it would go to exam 2 (MT)"));
    booth.exam(Exam::MT);
    CHECK_THAT(booth.refusal([&] { booth.log("MT crack 0.2 at 3"); }).what(),
               says("which MT found it? coupon T-1 has open: 2 (MT) and 3 (MT)"));
    CHECK_THAT(booth
                   .refusal([&] {
                       booth.write([](Writing &w) {
                           return correct_indication(w, "T-1", 7, "VT crack 0.1 at 5", "slip");
                       });
                   })
                   .what(),
               says("#7 was found by exam 2 (MT)"));
}

TEST_CASE("of several open exams it is the one of the person who types") {
    Booth booth;
    booth.coupon();
    booth.exam(Exam::VT, [](ExamRequest &r) { r.examiner = "A. Field"; });
    booth.exam(Exam::MT, [](ExamRequest &r) { r.examiner = "B. Mast"; });
    const auto log_by = [&](const std::string &who) {
        return booth
            .write(
                [](Writing &w) {
                    return log_lines(w, {"T-1", 0, "crack l 0.1 at 1", "line"});
                },
                who)
            .value.exam;
    };
    CHECK(log_by("B. Mast") == 2);
    CHECK(log_by("A. Field") == 1);
    CHECK_THAT(booth.refusal([&] { log_by("C. Roe"); }).what(), says("which exam found it?"));
}

TEST_CASE("the same lines are noticed when they come to an exam again") {
    Booth booth;
    booth.coupon();
    booth.exams();
    log_with(booth, file_of_lines("pore 0.02 at 1\npore 0.02 at 5\n"));
    const Refusal refusal = booth.refusal(
        [&] { log_with(booth, file_of_lines("# once more\r\n  pore 0.02 at 1\r\n\r\npore 0.02 at 5")); });
    CHECK_THAT(refusal.what(), says("the same lines are logged already, as #1 and #2"));
    CHECK(field_of(refusal) == "give again");
    LogRequest again = file_of_lines("pore 0.02 at 1\npore 0.02 at 5\n");
    again.again = true;
    CHECK(log_with(booth, again).value.indications[0].number == 3);
    // Other lines, and another exam, are other finds; the same ones typed once more are asked about.
    CHECK_NOTHROW(log_with(booth, file_of_lines("pore 0.02 at 3\npore 0.02 at 6\n")));
    CHECK_THAT(booth.refusal([&] { booth.log("pore 0.02 at 1\npore 0.02 at 5\n"); }).what(),
               says("stands as #1: is this another find?"));
    booth.exam(Exam::MT);
    CHECK_NOTHROW(log_with(booth, file_of_lines("pore 0.02 at 1\npore 0.02 at 5\n", 4)));
    // What was taken back may come again.
    Booth other;
    other.coupon();
    other.exams();
    log_with(other, file_of_lines("pore 0.02 at 1\n"));
    other.write([](Writing &w) { withdraw_indication(w, "T-1", 1, "wrong file"); });
    CHECK_NOTHROW(log_with(other, file_of_lines("pore 0.02 at 1\n")));
}

TEST_CASE("the same table of finds is not imported twice") {
    Booth booth;
    booth.coupon();
    booth.exams();
    const std::string rows = "coupon,exam,type,size,at\nT-1,3,gas pore,0.02,1\nT-1,3,gas pore,0.02,5\n";
    imported(booth, {Sheet::indications, rows});
    const Refusal refusal = booth.refusal([&] { imported(booth, {Sheet::indications, rows}); });
    CHECK_THAT(refusal.what(), says("the same table was imported already, with #1"));
    CHECK(field_of(refusal) == "give again");
    CHECK(imported(booth, {Sheet::indications, rows, false, true}).indications == 2);
}

TEST_CASE("a withdrawn coupon is judged no more, proves nothing, takes no entry, and comes back") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.finish();
    REQUIRE(booth.verdict() == Verdict::accept);
    booth.write([](Writing &w) { return grade_coupon(w, {"T-1", true, "", {}}); });
    const auto withdraw = [&](const std::string &why) {
        booth.write([&](Writing &w) { return withdraw_coupon(w, "T-1", why); });
    };
    const auto restore = [&](const std::string &why) {
        booth.write([&](Writing &w) { return restore_coupon(w, "T-1", why); });
    };
    CHECK_THAT(booth.refusal([&] { restore("slip"); }).what(), says("coupon T-1 is not withdrawn"));
    CHECK(field_of(booth.refusal([&] { withdraw(" "); })) == "give why");
    withdraw("the wrong piece");
    CHECK(booth.verdict() == Verdict::cannot_say);
    const Judged judged = judge_coupon(booth.office, booth.office.coupon("T-1"));
    CHECK(judged.withdrawn == "the wrong piece");
    for (const auto &one : judged.judgement.classes) CHECK(one.verdict == Verdict::cannot_say);
    const auto entries = booth.entries();
    booth.write([](Writing &w) { return judge_and_keep(w, "T-1"); });
    CHECK(booth.entries() == entries); // nothing was judged, so no verdict is kept
    CHECK(list_coupons(booth.office)[0].verdict == Verdict::cannot_say);
    const GradeStanding grade = standing_of_grade(booth.office, booth.office.coupon("T-1"));
    CHECK(grade.state == GradeStanding::State::again);
    CHECK(grade.why == "the coupon is withdrawn: the wrong piece");
    CHECK(exported(booth.office, {}).coupons == 0);
    const std::vector<std::function<void()>> doors{
        [&] { booth.exam(Exam::PT); },
        [&] { booth.reopen(); },
        [&] { booth.write([](Writing &w) { return remark_on(w, "T-1", "x"); }); },
        [&] { booth.write([](Writing &w) {
                  return grade_coupon(w, {"T-1", false, "a crater", {}});
              }); },
        [&] {
            booth.write([](Writing &w) { return change_coupon(w, {{"T-1", {{"note", "x"}}}, {}, "slip"}); });
        },
        [&] {
            imported(booth, {Sheet::indications, "coupon,exam,type\nT-1,3,crack\n"});
        },
        [&] { withdraw("again"); }};
    for (const auto &door : doors) CHECK_THAT(booth.refusal(door).what(), says("coupon T-1 is withdrawn"));
    restore("it was the right one");
    CHECK(booth.verdict() == Verdict::accept);
    CHECK(standing_of_grade(booth.office, booth.office.coupon("T-1")).state == GradeStanding::State::stands);
    CHECK_NOTHROW(booth.exam(Exam::PT));
}
