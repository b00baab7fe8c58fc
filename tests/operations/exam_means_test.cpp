// By whom, with what and on which metal an exam was made, as the record says by now; see tests/passes too.
#include "operations/exam_means.hpp"

#include "catch.hpp"
#include "operations/booth.hpp"
#include "operations/equipment.hpp"
#include "operations/people.hpp"
#include "operations/said_before.hpp"
#include "operations/welders.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// A coupon of which MT and PT are called for, and nobody said whether it is magnetic; all found nothing.
struct OfUnknownMetal : Booth {
    OfUnknownMetal() {
        coupon("T-1", {{"magnetic", ""}, {"also", "MT"}});
        for (const Exam method : all_exams()) exam(method, found_none);
    }
    Judged judged() { return judge_coupon(office, office.coupon("T-1")); }
};

/// Everything that is kept is as it would be worked out now, and every verdict comes out again.
bool all_holds(Booth &booth) { return verify(booth.office, {true, ""}).holds(); }

} // namespace

TEST_CASE("an MT waits for what is said of the metal, and asks for it by name", "[means]") {
    OfUnknownMetal booth;
    const Judged open = booth.judged();
    CHECK(open.verdict() == Verdict::cannot_say);
    const auto &findings = open.judgement.classes[*open.sought].findings;
    CHECK(std::any_of(findings.begin(), findings.end(), [](const Finding &f) {
        return f.kind == Finding::Kind::exam_missing && f.exams == std::vector{Exam::MT} &&
               f.missing.has(lack_of(Fact::magnetic));
    }));
    const auto say = [&](const std::string &magnetic) {
        booth.write([&](Writing &w) {
            return change_coupon(w, {{"T-1", {{"magnetic", magnetic}}}, {}, "looked"});
        });
    };
    say("no");
    CHECK(booth.judged().verdict() == Verdict::cannot_say);
    CHECK(booth.office.coupon("T-1").needed_exam(2).hangs_on == Missing());
    say("yes");
    CHECK(booth.judged().verdict() == Verdict::accept);
    CHECK(all_holds(booth));
}

TEST_CASE("a verdict of the ninth engine is replayed by the exams that it counted", "[means]") {
    OfUnknownMetal booth;
    CouponState then = booth.office.coupon("T-1");
    for (auto &exam : then.exams) {
        CHECK(exam.open.empty() == (exam.method != Exam::MT));
        exam.open.clear();
        exam.hangs_on = {};
    }
    const auto set = booth.office.criteria("mil-hdbk-1890-table-3");
    const Judgement said =
        judge(*set, then.record.facts(), then.exams_done(), then.found(), Vocabulary::shipped(), 9);
    CHECK(said.classes[*set->class_index("2")].verdict == Verdict::accept);
    check_replayed(booth, *set, said, 9);
}

TEST_CASE("what is said of equipment, people and welders afterwards is told of exams, and in lists",
          "[means]") {
    Booth booth;
    booth.coupon("T-1", {{"welder", "L1"}});
    booth.exams();
    booth.finish();
    booth.exam(Exam::VT, [](ExamRequest &r) {
        r.found = 0;
        r.equipment = {"lm-7"};
    });
    const auto exam = [&](int number) { return booth.office.coupon("T-1").needed_exam(number); };
    EquipmentRequest meter;
    meter.serial = "LM-7";
    const auto write_meter = [&] { booth.write([&](Writing &w) { return write_equipment(w, meter); }); };
    CHECK_THAT(exam(4).cautions().at(0), says("it is not on record"));
    meter.kind = "light meter";
    write_meter();
    CHECK_THAT(exam(4).cautions().at(0), says("no calibration of it is on record"));
    CHECK(exam(4).done().counts);
    meter.calibrations = {"2026-05-01 until 2027-05-01"};
    meter.why = "found the sheet";
    write_meter();
    CHECK(exam(4).cautions().empty());
    meter.withdraw = "it was dropped";
    meter.day = parse_day("2026-11-24");
    write_meter();
    CHECK_THAT(exam(4).open, says("it was withdrawn from use on 2026-11-24"));
    CHECK(all_holds(booth));
    booth.write([](Writing &w) { judge_and_keep(w, "T-1", {}); });
    CHECK(booth.verdict() == Verdict::accept);

    booth.write([](Writing &w) {
        WelderRequest welder;
        welder.mark = "L1";
        welder.name = "Field, A.";
        return enrol(w, welder);
    });
    CHECK_THAT(exam(1).open, says("its examiner welded this coupon"));
    CHECK(booth.verdict() == Verdict::cannot_say);
    CHECK(all_holds(booth));
}
