#include "operations/as_before.hpp"

#include "booth.hpp"
#include "catch.hpp"
#include "operations/equipment.hpp"
#include "operations/many.hpp"
#include "operations/people.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

auto before(const std::function<void(ExamRequest &)> &more = {}) {
    return [=](ExamRequest &r) {
        r.level.clear();
        r.as_before = true;
        if (more) more(r);
    };
}

} // namespace

TEST_CASE("practice, conditions and equipment come from the examiner's last exam of the method") {
    Booth booth;
    booth.coupon();
    booth.coupon("T-2");
    const Refusal none = booth.refusal([&] { booth.exam(Exam::PT, before()); });
    CHECK(none.field() == "as-before");
    CHECK_THAT(none.what(), says("no PT by A. Field is on record"));
    CHECK(field_of(booth.refusal([&] {
              booth.exam(Exam::PT, before([](ExamRequest &r) { r.examiner.clear(); }));
          })) == "give examiner");
    booth.exam(Exam::PT, [](ExamRequest &r) {
        r.practice = "asme-v-pt";
        r.procedure = "PT-1";
        r.conditions = {"type=II", "dwell=10 min", "temperature=20 C", "certificate=2027-01-01"};
        r.equipment = {"X-9"};
    });
    booth.exam(Exam::PT, [](ExamRequest &r) { r.examiner = "B. Other"; });
    const auto done =
        booth.exam(Exam::PT, before([](ExamRequest &r) { r.conditions = {"dwell=15 min"}; }), "T-2");
    CHECK(done.value.practice == "asme-v-pt");
    CHECK(done.value.practice_hash.size() == 64);
    CHECK(done.value.procedure == "PT-1");
    CHECK(done.value.level == "II");
    CHECK(done.value.conditions.at("type") == "II");
    CHECK(done.value.conditions.at("dwell") == "15 min");
    CHECK(done.value.conditions.at("certificate") == "2027-01-01");
    REQUIRE(done.value.equipment.size() == 1);
    // What is measured on each part is not as before.
    CHECK_FALSE(done.value.conditions.contains("temperature"));
    REQUIRE(!done.notes.empty());
    CHECK_THAT(done.notes[0], says("from the last PT by A. Field, of 2026-11-25: practice asme-v-pt") &&
                                  says("to be read anew: temperature"));
    // The newest counts, which is that one now; one that was withdrawn does not.
    CHECK(booth.exam(Exam::PT, before(), "T-2").value.conditions.at("dwell") == "15 min");
    booth.write([](Writing &w) {
        withdraw_exam(w, "T-2", 2, "slip");
        withdraw_exam(w, "T-2", 1, "slip");
    });
    CHECK(booth.exam(Exam::PT, before(), "T-2").value.conditions.at("dwell") == "10 min");
}

TEST_CASE("what the record tells of the examiner and the equipment is not taken from the last exam") {
    Booth booth;
    booth.coupon();
    const auto person = [&](const std::string &certificate) {
        booth.write([&](Writing &w) {
            return write_person(w, {"A. Field", {}, {certificate}, {}, {}, {}, "renewed"});
        });
    };
    const auto meter = [&](const std::string &calibration) {
        EquipmentRequest request;
        request.serial = "LM-7";
        request.kind = "light meter";
        request.calibrations = {calibration};
        request.why = "calibrated";
        booth.write([&](Writing &w) { return write_equipment(w, request); });
    };
    person("MT II until 2026-10-31");
    meter("2025-10-01 until 2026-10-31");
    booth.exam(Exam::MT, [](ExamRequest &r) {
        r.date = parse_day("2026-10-20");
        r.equipment = {"LM-7"};
        r.conditions = {"light=1200 lx"};
    });
    person("MT III until 2031-10-31");
    meter("2026-11-01 until 2027-10-31");
    const auto now = booth.exam(Exam::MT, before());
    CHECK(now.value.level == "III");
    CHECK(now.value.conditions.at("certificate") == "2031-10-31");
    CHECK(now.value.conditions.at("meter due") == "2027-10-31");
    CHECK(now.value.conditions.at("light") == "1200 lx");
}

TEST_CASE("of many exams at once what is as before is said once for each day that it comes from") {
    Booth booth;
    for (const char *mark : {"T-1", "T-2", "T-3", "T-4"}) booth.coupon(mark);
    booth.exam(Exam::VT, [](ExamRequest &r) {
        r.date = parse_day("2026-11-20");
        r.conditions = {"light=1200 lx"};
    });
    ExamRequest request;
    request.method = Exam::VT;
    request.examiner = "A. Field";
    request.as_before = true;
    request.found = 0;
    const auto done = booth.write([&](Writing &w) {
        return record_exams(w, {"T-2", "T-3", "T-4"}, request);
    });
    REQUIRE(done.value.exams.size() == 3);
    for (const auto &exam : done.value.exams) CHECK(exam.conditions.at("light") == "1200 lx");
    CHECK(done.notes.size() == 2);
}
