#include "operations/people.hpp"

#include "booth.hpp"
#include "catch.hpp"
#include "operations/equipment.hpp"
#include "operations/exported.hpp"
#include "operations/keeping.hpp"
#include "operations/standing.hpp"
#include "records/codecs/people.hpp"

#include <nlohmann/json.hpp>

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// A record with people and equipment. Its today is 2026-11-25.
class Staffed : public Booth {
public:
    PersonRecord person(const PersonRequest &request) {
        return write([&](Writing &w) { return write_person(w, request); }).value.person;
    }
    PersonRecord field(std::vector<std::string> certificates, std::vector<std::string> vision = {}) {
        PersonRequest request{"A. Field", {}, std::move(certificates), {}, std::move(vision), {}, "renewed"};
        return person(request);
    }
    EquipmentRecord equipment(const EquipmentRequest &request) {
        return write([&](Writing &w) { return write_equipment(w, request); }).value.equipment;
    }
    EquipmentRecord meter(std::vector<std::string> calibrations) {
        EquipmentRequest request;
        request.serial = "LM-7";
        request.kind = "light meter";
        request.calibrations = std::move(calibrations);
        request.why = "calibrated";
        return equipment(request);
    }
    /// An exam that says nothing of its examiner but the name.
    Done<ExamRecord> plain(Exam method, const std::function<void(ExamRequest &)> &more = {},
                           const std::string &mark = "T-1") {
        return exam(
            method,
            [&](ExamRequest &r) {
                r.level.clear();
                r.found = 0;
                if (more) more(r);
            },
            mark);
    }
};

std::string all(const std::vector<std::string> &notes) {
    std::string out;
    for (const auto &note : notes) out += note + "\n";
    return out;
}

auto on(const char *day) {
    return [=](ExamRequest &r) { r.date = parse_day(day); };
}

} // namespace

TEST_CASE("a certificate and a vision test are read, and print as they are read") {
    const Certificate full =
        read_certificate("MT II since 2022-05-02 until 2027-05-01 number 47 11 scheme SNT-TC-1A shop 3");
    CHECK(full.method == Exam::MT);
    CHECK(full.level == "II");
    CHECK(full.number == "47 11");
    CHECK(full.scheme == "SNT-TC-1A shop 3");
    CHECK(full.since == parse_day("2022-05-02"));
    CHECK(full.until == parse_day("2027-05-01"));
    CHECK(read_certificate(print(full)) == full);
    CHECK(name_of(full) == "MT II 47 11");
    CHECK(full.in_force(parse_day("2027-05-01")));
    CHECK_FALSE(full.in_force(parse_day("2027-05-02")));
    CHECK(full.in_force(parse_day("2022-05-02")));
    CHECK_FALSE(full.in_force(parse_day("2022-05-01")));
    for (const auto &[text, why] :
         {std::pair{"MT", "a method and a level come first"},
          {"XX II", "'XX' is no method"},
          {"MT 4", "'4' is no level"},
          {"MT II untill 2027-05-01", "did you mean 'until'?"},
          {"MT II until", "nothing stands behind 'until'"},
          {"MT II until 2027-02-30", "2027-02-30"},
          {"MT II until 2027-05-01 2028-05-01", "stands behind the day"},
          {"MT II since 2027-05-02 until 2027-05-01", "would end before it begins"}}) {
        INFO(text);
        CHECK_THROWS_WITH(read_certificate(text), says(why));
    }
    CHECK(print(read_vision_test("2026-03-01 J1")) == "2026-03-01 J1");
    CHECK_THROWS_WITH(read_vision_test("2026-03-01 J3"), says("expected J1, J2 or N4.5"));
    CHECK_THROWS_WITH(read_vision_test("last week"), says("vision"));
}

TEST_CASE("a person is registered, changed with a reason, and keeps older certificates beside newer ones") {
    Staffed booth;
    CHECK(booth
              .person({"A.  Field",
                       {"Technician"},
                       {"MT II until 2026-06-30 number 1"},
                       {},
                       {"2025-09-01"},
                       {},
                       ""})
              .name == "A. Field");
    CHECK_THAT(booth.refusal([&] {
                        booth.person({"a. field", {}, {"VT II"}, {}, {}, {}, ""});
                    })
                   .what(),
               says("needs a reason"));
    CHECK_THAT(booth.refusal([&] {
                        booth.person({"A. Field", {"boss"}, {}, {}, {}, {}, "x"});
                    })
                   .what(),
               says("expected technician, instructor, welder or keeper"));
    CHECK_THAT(booth.refusal([&] {
                        booth.person({"A. Field", {"technician"}, {}, {}, {}, {}, "x"});
                    })
                   .what(),
               says("changes nothing"));
    CHECK_THAT(booth.refusal([&] {
                        booth.person({" ", {"technician"}, {}, {}, {}, {}, ""});
                    })
                   .what(),
               says("needs a name"));
    CHECK_THAT(booth.refusal([&] {
                        booth.person({"A. Field", {}, {}, {}, {"2026-11-26"}, {}, "x"});
                    })
                   .what(),
               says("is to come"));
    booth.field({"MT II until 2031-06-30 number 2"}, {"2026-09-01 J1"});
    PersonSheet sheet = show_person(booth.office, "a. field");
    CHECK(sheet.person.certificates.size() == 2);
    CHECK(sheet.person.vision.size() == 2);
    CHECK(sheet.person.roles == std::vector<std::string>{"technician"});
    CHECK(sheet.history.size() == 2);
    CHECK(sheet.history[1].reason == "renewed");
    CHECK(sheet.history[1].supersedes == sheet.history[0].seq);
    // The same number takes the place of the old one.
    booth.field({"MT II until 2031-06-29 number 2"});
    CHECK(show_person(booth.office, "A. Field").person.certificates.size() == 2);
    CHECK_THAT(booth.refusal([&] {
                        booth.person({"A. Field", {}, {}, {"MT II"}, {}, {}, "x"});
                    })
                   .what(),
               says("on record: MT II 1 and MT II 2"));
    booth.person({"A. Field", {}, {}, {"MT II 1"}, {}, {}, "never given"});
    sheet = show_person(booth.office, "A. Field");
    CHECK(sheet.person.certificates.size() == 1);
    CHECK(codec::person_from("A. Field", codec::json_of(sheet.person)) == sheet.person);
    CHECK_THAT(booth.refusal([&] { show_person(booth.office, "B. Field"); }).what(),
               says("did you mean 'A. Field'?"));
    CHECK(verify(booth.office, {true, ""}).holds());
}

TEST_CASE("an exam takes what is on record of its examiner, as it was on the day of the exam") {
    Staffed booth;
    booth.coupon();
    booth.field({"MT II until 2026-06-30 number 1", "MT III until 2031-06-30 since 2026-07-01 number 2"},
                {"2025-09-01 J2", "2026-09-01 J1"});
    const auto now = booth.plain(Exam::MT, [](ExamRequest &r) { r.examiner = "a. field"; });
    CHECK(now.value.examiner == "A. Field");
    CHECK(now.value.level == "III");
    CHECK(now.value.conditions.at("certificate") == "2031-06-30");
    CHECK(now.value.conditions.at("vision") == "2026-09-01");
    CHECK(now.value.conditions.at("vision test") == "J1");
    CHECK(now.value.open.empty());
    CHECK_THAT(all(now.notes), says("from the record of A. Field: level III, certificate until 2031-06-30"));
    const auto then = booth.plain(Exam::MT, on("2026-06-30"));
    CHECK(then.value.level == "II");
    CHECK(then.value.conditions.at("certificate") == "2026-06-30");
    CHECK(then.value.conditions.at("vision test") == "J2");
    // What agrees may be said, in any words.
    const auto said = booth.plain(Exam::MT, [](ExamRequest &r) {
        r.level = "Level 3";
        r.conditions = {"certificate=2031-06-30"};
    });
    CHECK(said.value.level == "Level 3");
    CHECK(said.value.open.empty());
}

TEST_CASE("a vision test of before an exam that was entered after it is told as that") {
    Staffed booth;
    booth.coupon();
    booth.field({"MT II until 2031-06-30"});
    booth.plain(Exam::MT);
    const auto told = [&] { return booth.office.coupon("T-1").exams.at(0).level_told(); };
    CHECK(told() == "II, no vision test on record");
    booth.field({}, {"2026-09-01 J1"});
    CHECK(told() == "II, vision test of 2026-09-01, entered after the exam");
    booth.plain(Exam::MT);
    CHECK(booth.office.coupon("T-1").exams.at(1).level_told() == "II");
}

TEST_CASE("a vision test that was a slip is taken off, and no exam rests on it any more") {
    Staffed booth;
    booth.coupon();
    booth.field({"MT II until 2031-06-30"}, {"2024-03-01 J1", "2026-09-01 J1"});
    booth.plain(Exam::MT);
    CHECK(booth.office.coupon("T-1").exams.at(0).done().counts);
    const PersonRequest off{"A. Field", {}, {}, {"vision 2026-09-01"}, {}, {}, "wrong year"};
    booth.person(off);
    CHECK_FALSE(booth.office.coupon("T-1").exams.at(0).done().counts);
    CHECK_THAT(booth.refusal([&] { booth.person(off); }).what(), says("has no vision test of 2026-09-01"));
}

TEST_CASE("an exam that says otherwise than the record of its examiner is refused, naming both") {
    Staffed booth;
    booth.coupon();
    booth.field({"MT II until 2031-06-30"}, {"2026-09-01 J1"});
    const auto refused = [&](const std::function<void(ExamRequest &)> &more) {
        return std::string(booth
                               .refusal([&] {
                                   booth.plain(Exam::MT, [&](ExamRequest &r) {
                                       r.sure = true; // nor does that mend it
                                       more(r);
                                   });
                               })
                               .what());
    };
    CHECK_THAT(refused([](ExamRequest &r) { r.level = "III"; }),
               says("level: the exam says III, the record of A. Field says II"));
    CHECK_THAT(refused([](ExamRequest &r) { r.conditions = {"level=I"}; }), says("the exam says I, "));
    CHECK_THAT(refused([](ExamRequest &r) { r.conditions = {"certificate=2032-06-30"}; }),
               says("certificate: the exam says 2032-06-30, the record of A. Field says 2031-06-30"));
    CHECK_THAT(refused([](ExamRequest &r) { r.conditions = {"vision=2026-11-01"}; }),
               says("the record of A. Field says 2026-09-01"));
    CHECK_THAT(refused([](ExamRequest &r) { r.conditions = {"vision test=J2"}; }), says("says J1"));
}

TEST_CASE("an exam by somebody who is not entitled is asked about, and never counts") {
    Staffed booth;
    booth.coupon();
    booth.field({"MT II until 2026-11-24", "RT I until 2031-06-30", "PT II since 2026-11-26"});
    for (const auto &[method, id, why] :
         {std::tuple{Exam::VT, "certificate-none", "holds no certificate for the method"},
          {Exam::MT, "certificate-over", "certificate was over on the day of the exam"},
          {Exam::RT, "certificate-level", "does not judge alone"},
          {Exam::PT, "certificate-later", "began after the day of the exam"}}) {
        const Exam by = method;
        const Refusal asked = booth.refusal([&] { booth.plain(by); });
        CHECK(field_of(asked) == "give sure");
        CHECK_THAT(asked.what(), says(why));
        const auto taken = booth.plain(by, [](ExamRequest &r) { r.sure = true; });
        CHECK(taken.value.sure == std::vector<std::string>{id});
        CHECK_THAT(taken.value.open, says(why));
        CHECK_FALSE(taken.value.done().counts);
    }
    // On its last day a certificate counts.
    CHECK(booth.plain(Exam::MT, on("2026-11-24")).value.done().counts);
}

TEST_CASE("of somebody who is not on record nothing is filled in, and a slip of the name is told") {
    Staffed booth;
    booth.coupon();
    booth.field({"MT II until 2031-06-30"});
    const auto feld = [&](bool sure) {
        return booth.exam(Exam::MT, [&](ExamRequest &r) {
            r.examiner = "A. Feld";
            r.found = 0;
            r.level = "II";
            r.sure = sure;
        });
    };
    CHECK_THAT(booth.refusal([&] { feld(false); }).what(),
               says("'A. Feld' is not on record; did you mean 'A. Field'?"));
    const auto slip = feld(true);
    CHECK(slip.value.conditions.empty());
    CHECK(slip.value.sure == std::vector<std::string>{"another examiner"});
    CHECK(slip.value.done().counts);
    CHECK(booth.exam(Exam::MT, [](ExamRequest &r) { r.examiner = "Quentin Zimmer"; }).notes.empty());
}

TEST_CASE("an import asks the same of an examiner, and keeps what another record said") {
    Staffed from;
    from.coupon();
    from.field({"MT II until 2026-11-24"});
    from.plain(Exam::MT, [](ExamRequest &r) { r.sure = true; });
    for (const auto sheet : {std::optional<Sheet>(), std::optional(Sheet::exams)}) {
        const std::string text = exported(from.office, sheet).text;
        Staffed stranger, knows;
        if (sheet) stranger.coupon();
        if (sheet) knows.coupon();
        const auto import = [&](Staffed &to, const std::string &what) {
            to.write([&](Writing &w) { return store_import(w, prepare_import(to.office, {sheet, what})); });
            return to.office.coupon("T-1").exams.front();
        };
        CHECK_THAT(import(stranger, text).open, says("was over on the day"));
        // A file that says nothing of it is asked all the same.
        knows.field({"MT II until 2026-11-24"});
        std::string silent = text;
        for (std::size_t at; (at = silent.find("certificate-over")) != std::string::npos;)
            silent.replace(at, 16, "of-no-meaning");
        CHECK_THAT(knows.refusal([&] { import(knows, silent); }).what(), says("certificate-over"));
        CHECK_THAT(import(knows, text).open, says("was over on the day"));
    }
}

TEST_CASE("what an exam used is on it as it was that day, and answers the practice") {
    Staffed booth;
    booth.coupon();
    booth.meter({"2025-05-01 until 2026-05-01", "2026-06-01 until 2027-06-01"});
    const auto with = [](std::vector<std::string> serials, const char *day = "2026-11-25") {
        return [=](ExamRequest &r) {
            r.found = 0;
            r.equipment = serials;
            r.date = parse_day(day);
        };
    };
    const auto now = booth.exam(Exam::MT, with({"lm-7", "LM-7"}));
    REQUIRE(now.value.equipment.size() == 1);
    CHECK(now.value.equipment[0] ==
          EquipmentUsed{"LM-7", "light meter", parse_day("2026-06-01"), parse_day("2027-06-01"), false, {}});
    CHECK(now.value.conditions.at("meter due") == "2027-06-01");
    CHECK(now.value.cautions().empty());
    CHECK(now.value.done().counts);
    // Between two calibrations: told, and such an exam does not count, whether a practice names it or not.
    const auto between = booth.exam(Exam::MT, with({"LM-7"}, "2026-05-02"));
    CHECK_THAT(all(between.notes),
               says("its calibration was over on 2026-05-02, it held through 2026-05-01"));
    CHECK(between.value.cautions().size() == 1);
    CHECK_FALSE(booth.office.coupon("T-1").needed_exam(between.value.number).done().counts);
    CHECK(booth.exam(Exam::MT, with({"LM-7"}, "2026-05-01")).value.cautions().empty());
    EquipmentRequest yoke;
    yoke.serial = "Y-3";
    yoke.kind = "yoke";
    yoke.calibrations = {"2026-05-24"};
    booth.equipment(yoke);
    const auto by_practice = [&](const char *day) {
        return booth.exam(Exam::MT, [=](ExamRequest &r) {
            with({"Y-3"}, day)(r);
            r.practice = "astm-e1444-mt";
            r.conditions = {"technique=yoke"};
        });
    };
    const auto judged = by_practice("2026-11-25");
    CHECK_THAT(judged.value.invalid, says("yoke checked 2026-05-24: within 6 months is asked"));
    CHECK_FALSE(judged.value.done().counts);
    CHECK_THAT(by_practice("2026-11-24").value.invalid, !says("yoke checked 2026-05-24"));
    const auto long_ago = booth.exam(Exam::VT, [&](ExamRequest &r) {
        with({"LM-7"}, "2025-04-30")(r);
        r.sure = true; // the coupon was registered more than a year later
    });
    CHECK_THAT(long_ago.value.cautions().at(0), says("calibrated only after the exam"));
    CHECK_THAT(booth.exam(Exam::VT, with({"X-9"})).value.cautions().at(0), says("it is not on record"));
    // Of a film no light meter is asked.
    CHECK_FALSE(booth.exam(Exam::RT, with({"LM-7"})).value.conditions.contains("meter due"));
    CHECK_THAT(booth
                   .refusal([&] {
                       booth.exam(Exam::MT, [&](ExamRequest &r) {
                           with({"LM-7"})(r);
                           r.conditions = {"meter due=2028-01-01"};
                       });
                   })
                   .what(),
               says("meter due: the exam says 2028-01-01, the record of light meter LM-7 says 2027-06-01"));
    // A caution stands with the verdict.
    CHECK(judge_coupon(booth.office, booth.office.coupon("T-1")).cautions().size() == 3);
    CHECK(verify(booth.office, {true, ""}).holds());
}

TEST_CASE("of several meters the one that is over first counts, and of a yoke when it was checked") {
    Staffed booth;
    booth.coupon();
    booth.meter({"2026-06-01 until 2027-06-01"});
    EquipmentRequest other;
    other.serial = "UV-1";
    other.kind = "uv meter";
    other.calibrations = {"2026-06-01 until 2027-01-01"};
    CHECK(booth.equipment(other).kind == "UV meter");
    EquipmentRequest yoke;
    yoke.serial = "Y-3";
    yoke.kind = "yoke";
    yoke.calibrations = {"2026-02-01"};
    booth.equipment(yoke);
    const auto done = booth.exam(Exam::MT, [](ExamRequest &r) { r.equipment = {"LM-7", "UV-1", "Y-3"}; });
    CHECK(done.value.conditions.at("meter due") == "2027-01-01");
    CHECK(done.value.conditions.at("yoke checked") == "2026-02-01");
    EquipmentRequest gone;
    gone.serial = "Y-3";
    gone.withdraw = "a cracked leg";
    gone.day = parse_day("2026-11-20");
    CHECK(booth.equipment(gone).withdrawn == parse_day("2026-11-20"));
    const auto used = [&](const char *day) {
        return booth
            .exam(Exam::MT,
                  [=](ExamRequest &r) {
                      r.equipment = {"Y-3"};
                      r.date = parse_day(day);
                  })
            .value.cautions();
    };
    CHECK(used("2026-11-19").empty());
    CHECK_THAT(used("2026-11-20").at(0), says("was withdrawn from use on 2026-11-20"));
    EquipmentRequest back;
    back.serial = "Y-3";
    back.back = true;
    CHECK_THAT(booth.refusal([&] { booth.equipment(back); }).what(), says("needs a reason"));
    back.why = "mended and checked";
    CHECK_THAT(booth.refusal([&] { booth.equipment(back); }).what(),
               says("would count again")); // that of today
    back.sure = true;
    booth.equipment(back);
    CHECK_THAT(used("2026-11-20").at(0), says("was withdrawn")); // it was out then
    CHECK(show_equipment(booth.office, "y-3").history.size() == 3);
    CHECK_THAT(booth.refusal([&] { booth.equipment(back); }).what(), says("is in use"));
    EquipmentRequest nothing;
    nothing.serial = "Q";
    nothing.note = "new";
    CHECK(field_of(booth.refusal([&] { booth.equipment(nothing); })) == "give kind");
    nothing.kind = "yolk";
    CHECK_THAT(booth.refusal([&] { booth.equipment(nothing); }).what(), says("did you mean 'yoke'?"));
}

TEST_CASE("what ends of people and equipment is due with the qualifications") {
    Staffed booth;
    booth.field({"MT II until 2026-06-30 number 1", "MT II until 2031-06-30 number 2",
                 "RT II until 2027-01-24", "VT II"},
                {"2026-01-10"});
    booth.meter({"2025-05-01 until 2026-05-01", "2026-06-01 until 2026-11-24"});
    const DueList list = due(booth.office, 60); // through 2027-01-24
    REQUIRE(list.endings.size() == 3);
    CHECK(list.endings[0].what == Ending::What::calibration);
    CHECK(list.endings[0].days_left == -1);
    CHECK(list.endings[1].what == Ending::What::vision);
    CHECK(print(list.endings[1].by) == "2027-01-10");
    CHECK(list.endings[2].of == "RT II");
    CHECK(due(booth.office, 59).endings.size() == 2);
}
