#include "operations/examining.hpp"

#include "booth.hpp"
#include "catch.hpp"
#include "operations/looking.hpp"

#include <algorithm>

using namespace beadbook;
using namespace beadbook::test;

namespace {

const std::vector<std::string> good_vt{"light=120 fc",      "distance=20 in", "angle=45 deg",
                                       "vision=2026-06-01", "vision test=J1", "certificate=2026-12-31"};

/// By a practice, with these conditions.
auto by(const std::string &practice, std::vector<std::string> conditions, int replaces = 0) {
    return [=](ExamRequest &request) {
        request.practice = practice;
        request.conditions = conditions;
        request.replaces = replaces;
        request.why = replaces > 0 ? "examined again" : "";
        request.found = 0;
    };
}

auto with(std::vector<std::string> conditions) { return by("", std::move(conditions)); }

Refusal refused(Booth &booth, Exam method, const std::function<void(ExamRequest &)> &more) {
    return booth.refusal([&] { booth.exam(method, more); });
}

ExamRequest request_of(Exam method, const std::string &practice) {
    ExamRequest out;
    out.coupon = "T-1";
    out.method = method;
    out.practice = practice;
    return out;
}

} // namespace

TEST_CASE("exams are numbered from 1, and the number of one that was withdrawn is not used again") {
    Booth booth;
    CHECK_THAT(refused(booth, Exam::VT, {}).what(), says("there is no coupon 'T-1'"));
    booth.coupon();
    CHECK(booth.exam(Exam::VT).value.number == 1);
    CHECK(booth.exam(Exam::MT).value.number == 2);
    booth.write([](Writing &w) { withdraw_exam(w, "T-1", 2, "of another coupon"); });
    CHECK(booth.office.coupon("T-1").exams.size() == 1);
    CHECK(booth.exam(Exam::RT).value.number == 3);
    CHECK(history_of_coupon(booth.office, "T-1").size() == 5);
}

TEST_CASE("an exam is of a day that has come, and not of before the weld") {
    Booth booth;
    booth.coupon("T-1", {{"welded", "2026-11-20"}});
    const auto on = [](const char *day) { return [=](ExamRequest &r) { r.date = parse_day(day); }; };
    const Refusal to_come = refused(booth, Exam::VT, on("2026-11-26"));
    CHECK_THAT(to_come.what(), says("the exam is dated 2026-11-26, which is to come"));
    CHECK(field_of(to_come) == "date");
    const Refusal before = refused(booth, Exam::VT, on("2026-11-19"));
    CHECK_THAT(before.what(), says("before coupon T-1 was welded on 2026-11-20"));
    CHECK(field_of(before) == "date");
    CHECK_NOTHROW(booth.exam(Exam::VT, on("2026-11-20")));
    CHECK_NOTHROW(booth.exam(Exam::VT, on("2026-11-25")));
}

TEST_CASE("an exam keeps what was said, and its day is today unless it was another") {
    Booth booth;
    booth.coupon();
    const ExamRecord said = booth
                                .exam(Exam::PT,
                                      [](ExamRequest &r) {
                                          r.date = parse_day("2026-11-20");
                                          r.procedure = "PT-3";
                                          r.note = " cold shop ";
                                          r.conditions = {"dwell=10 min"};
                                      })
                                .value;
    CHECK(said == booth.office.coupon("T-1").needed_exam(1));
    CHECK(said.method == Exam::PT);
    CHECK(print(said.date) == "2026-11-20");
    CHECK(said.examiner == "A. Field");
    CHECK(said.level == "II");
    CHECK(said.procedure == "PT-3");
    CHECK(said.note == "cold shop");
    CHECK(said.conditions.at("dwell") == "10 min");
    CHECK(print(booth.exam(Exam::VT).value.date) == "2026-11-25");
}

TEST_CASE("an exam by a practice of another method, or by none that is known, is refused") {
    Booth booth;
    booth.coupon();
    const Refusal other = refused(booth, Exam::PT, by("asme-v-vt", good_vt));
    CHECK_THAT(other.what(), says("practice asme-v-vt is for VT, not for PT"));
    CHECK(field_of(other) == "practice");
    CHECK_THAT(refused(booth, Exam::PT, by("asme-v-tp", {})).what(),
               says("there is no practice 'asme-v-tp'"));
    CHECK(booth.office.coupon("T-1").exams.empty());
    CHECK(booth.exam(Exam::VT, by("asme-v-vt", good_vt)).value.practice == "asme-v-vt");
}

TEST_CASE("conditions are name=value, each once and of its kind; names of one's own are kept with a doubt") {
    Booth booth;
    booth.coupon();
    const std::vector<std::tuple<Exam, std::vector<std::string>, std::string>> rows{
        {Exam::VT, {"light"}, "write it as name=value"},
        {Exam::VT, {"=5"}, "write it as name=value"},
        {Exam::VT, {"light="}, "condition light: nothing given"},
        {Exam::VT, {"light=bright"}, "condition light: 'bright' does not begin with a number"},
        {Exam::VT, {"distance=20 lb"}, "'20 lb' is a weight; expected a length"},
        {Exam::VT, {"light=60 fc", "light=70 fc"}, "condition light is given twice"},
        {Exam::MT, {"technique=yolk"}, "did you mean 'yoke'?"},
        {Exam::VT, {"vision=2026-02-30"}, "no day of the calendar"},
    };
    for (const auto &[method, conditions, expected] : rows) {
        INFO(conditions.back());
        CHECK_THAT(refused(booth, method, with(conditions)).what(), says(expected));
    }
    CHECK(booth.office.coupon("T-1").exams.empty());
    const auto own = booth.exam(Exam::VT, with({"ligth=60 fc", "bench=4", "light=60 fc"}));
    CHECK(own.value.conditions.size() == 3);
    REQUIRE(own.notes.size() == 1);
    CHECK_THAT(own.notes[0], says("condition 'ligth' is kept as a name of your own; did you mean 'light'?"));
}

TEST_CASE("an exam that was not valid does not count, and says what to repeat; one that replaces it does") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.finish();
    CHECK(booth.verdict() == Verdict::accept);
    auto dim = good_vt;
    dim[0] = "light=60 fc";
    CHECK_THAT(booth.exam(Exam::VT, by("asme-v-vt", dim, 1)).value.invalid,
               says("not valid: light 60 fc: at least 100 fc or 1076 lx is asked [T-952, read]; examine "
                    "again with more "
                    "light"));
    CHECK(booth.verdict() == Verdict::cannot_say);
    const ExamRecord again = booth.exam(Exam::VT, by("asme-v-vt", good_vt, 1)).value;
    CHECK(again.number == 1);
    CHECK(again.invalid.empty());
    CHECK(booth.verdict() == Verdict::accept);
    // What nobody recorded decides nothing.
    const ExamRecord unsaid = booth
                                  .exam(Exam::VT,
                                        [](ExamRequest &r) {
                                            by("asme-v-vt", {good_vt[0]}, 1)(r);
                                            r.says_all = true;
                                        })
                                  .value;
    CHECK_THAT(unsaid.invalid,
               says("cannot be called valid without distance, angle, vision, vision test and certificate"));
    CHECK(booth.verdict() == Verdict::cannot_say);
    const auto history = history_of_coupon(booth.office, "T-1");
    CHECK(history.back().reason == "examined again");
    CHECK(booth.office.coupon("T-1").exams.size() == 3);
}

TEST_CASE("an exam that left something out fulfils no requirement, but what it found counts") {
    Booth booth;
    booth.coupon();
    for (const Exam method : {Exam::VT, Exam::MT}) booth.exam(method, Booth::found_none);
    booth.exam(Exam::RT, [](ExamRequest &r) { r.incomplete = "film 2 is fogged"; });
    booth.finish();
    CHECK(booth.verdict({"", "1"}) == Verdict::cannot_say); // class 1 asks for RT
    booth.finds("crack l 0.2 at 2");
    CHECK(booth.verdict({"", "1"}) == Verdict::reject);
}

TEST_CASE("a correction of an exam needs the exam and a reason, and its finds stay") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.finds("gas pore 0.02 at 2");
    const auto replace = [&](int number, const std::string &why, std::optional<int> found = {}) {
        return [=](ExamRequest &r) {
            r.replaces = number;
            r.why = why;
            r.note = "second reading";
            r.found = found;
        };
    };
    CHECK_THAT(refused(booth, Exam::VT, replace(9, "x")).what(), says("has no exam 9"));
    CHECK(field_of(refused(booth, Exam::VT, replace(1, " "))) == "give why");
    CHECK(field_of(refused(booth, Exam::RT, replace(3, "read again", 0))) == "found");
    const auto before = booth.office.coupon("T-1").exam_seq.at(3);
    CHECK(booth.exam(Exam::RT, replace(3, "read again", 1)).value.finished->found == 1);
    const CouponState now = booth.office.coupon("T-1");
    CHECK(now.needed_exam(3).note == "second reading");
    CHECK(now.needed_indication(1).exam == 3);
    CHECK(booth.verdict() == Verdict::accept);
    const auto history = history_of_coupon(booth.office, "T-1");
    CHECK(history.back().supersedes == before);
    CHECK(history.back().reason == "read again");
    // Whoever does not say again what it found leaves it open.
    CHECK_FALSE(booth.exam(Exam::RT, replace(3, "third reading")).value.finished);
    CHECK(booth.verdict({"", "1"}) == Verdict::cannot_say);
}

TEST_CASE("what is left out in place of another exam is taken over from it, and told") {
    Booth booth;
    booth.coupon();
    booth.exam(Exam::VT, [](ExamRequest &r) {
        r.date = parse_day("2026-11-20");
        r.practice = "asme-v-vt";
        r.conditions = good_vt;
        r.conditions.emplace_back("lamp of ours=left");
        r.equipment = {"LM-9"};
        r.procedure = "VT-2";
        r.incomplete = "the root was not seen";
    });
    const auto in_place = [&](Exam method, const std::function<void(ExamRequest &)> &more) {
        return booth.exam(method, [&](ExamRequest &r) {
            r.examiner = r.level = "";
            r.replaces = 1;
            r.why = "said again";
            more(r);
        });
    };
    const auto kept = in_place(Exam::VT, [](ExamRequest &r) { r.conditions = {"light=150 fc"}; });
    const ExamRecord &now = kept.value;
    CHECK(print(now.date) == "2026-11-20");
    CHECK(now.examiner == "A. Field");
    CHECK(now.level == "II");
    CHECK(now.procedure == "VT-2");
    CHECK(now.practice == "asme-v-vt");
    CHECK(now.incomplete == "the root was not seen");
    CHECK(now.conditions.at("light") == "150 fc");
    CHECK(now.conditions.at("distance") == "20 in");
    CHECK(now.conditions.size() == good_vt.size() + 1);
    REQUIRE(now.equipment.size() == 1);
    CHECK(now.equipment[0].serial == "LM-9");
    CHECK_THAT(kept.notes.at(0), says("taken over from exam 1 (VT), which it replaces: day 2026-11-20"));
    // That it was carried through after all must be said.
    CHECK(in_place(Exam::VT, [](ExamRequest &r) { r.incomplete = "no"; }).value.incomplete.empty());
    SECTION("what is another examiner's is not his") {
        const auto other = in_place(Exam::VT, [](ExamRequest &r) { r.examiner = "B. Quay"; });
        CHECK(other.value.level.empty());
        CHECK_FALSE(other.value.conditions.contains("vision"));
        CHECK(other.value.conditions.contains("light"));
        CHECK_THAT(other.notes.at(0), says("; not taken over: level II"));
    }
    SECTION("what was of another method says nothing of this one") {
        const auto other = in_place(Exam::MT, [](ExamRequest &) {});
        CHECK(other.value.practice.empty());
        CHECK(other.value.conditions.empty());
        CHECK(other.value.equipment.empty());
        CHECK_THAT(other.notes.at(0), says("not taken over: "));
    }
    SECTION("where all is said that a page shows, only what it does not show is taken over") {
        const auto other = in_place(Exam::VT, [](ExamRequest &r) {
            r.examiner = "A. Field";
            r.says_all = true;
        });
        CHECK(other.value.conditions == std::map<std::string, std::string>{{"lamp of ours", "left"}});
        CHECK(other.value.practice.empty());
        CHECK(print(other.value.date) == print(booth.outside.today()));
    }
}

TEST_CASE("an exam is withdrawn with a reason, and not while it has finds") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.finds("gas pore 0.02 at 2");
    const auto withdraw = [&](int number, const std::string &why) {
        booth.write([&](Writing &w) { withdraw_exam(w, "T-1", number, why); });
    };
    CHECK_THAT(booth.refusal([&] { withdraw(3, "slip"); }).what(),
               says("exam 3 found indication #1; withdraw its indications first"));
    CHECK(field_of(booth.refusal([&] { withdraw(2, ""); })) == "give why");
    CHECK_THAT(booth.refusal([&] { withdraw(9, "slip"); }).what(), says("has no exam 9"));
    booth.take_back(1);
    CHECK(booth.verdict({"", "1"}) == Verdict::accept);
    withdraw(3, "film of another coupon");
    CHECK(booth.office.coupon("T-1").exam(3) == nullptr);
    CHECK_THAT(booth.refusal([&] { withdraw(3, "again"); }).what(), says("has no exam 3"));
    CHECK(booth.verdict({"", "1"}) == Verdict::cannot_say);
}

TEST_CASE("what a practice would still ask for shrinks as it is told, in the practice's order") {
    Booth booth;
    booth.coupon();
    ExamRequest request = request_of(Exam::VT, "asme-v-vt");
    CHECK(conditions_to_ask(booth.office, request).back() == "level");
    request.level = "II";
    const auto asked = conditions_to_ask(booth.office, request);
    CHECK(asked == std::vector<std::string>{"distance", "angle", "light", "vision", "vision test",
                                            "certificate", "meter due"});
    request.conditions = {"angle=45 deg", "light=120 fc"};
    CHECK(conditions_to_ask(booth.office, request) ==
          std::vector<std::string>{"distance", "vision", "vision test", "certificate", "meter due"});
    request.conditions = good_vt;
    CHECK(conditions_to_ask(booth.office, request) == std::vector<std::string>{"meter due"});
    request.practice.clear();
    const Refusal none = booth.refusal([&] { conditions_to_ask(booth.office, request); });
    CHECK(field_of(none) == "give practice");
    CHECK(none.kind() == Refusal::Kind::request);
    request = request_of(Exam::PT, "asme-v-vt");
    CHECK(field_of(booth.refusal([&] { conditions_to_ask(booth.office, request); })) == "practice");
}

TEST_CASE("an exam stays valid by the text that was kept with it, whatever becomes of the file") {
    Booth booth;
    booth.coupon();
    const std::string practice = "practice: own\ntitle: t\nedition: e\nmethod: VT\nrules:\n"
                                 "  - {id: l, must: light at least 50 fc, clause: c, standing: {house: x}}\n";
    write_file(booth.file("own.yaml"), practice);
    CHECK(booth.exam(Exam::VT, by(booth.file("own.yaml"), {"light=60 fc"})).value.invalid.empty());
    std::filesystem::remove(booth.file("own.yaml"));
    OpenBook later(booth.path(), Ledger::Mode::read);
    CHECK(later.office.coupon("T-1").needed_exam(1).invalid.empty());
    CHECK(later.office.coupon("T-1").needed_exam(1).practice == "own");
}

TEST_CASE("a practice whose text comes into the record later is found then") {
    Booth booth;
    booth.coupon();
    const auto practice = shipped_practice("asme-v-vt");
    CHECK_FALSE(booth.catalogue.kept_practice(booth.book.ledger(), practice->hash));
    CHECK(booth.exam(Exam::VT, by("asme-v-vt", good_vt)).value.invalid.empty());
}
