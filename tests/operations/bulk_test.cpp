#include "operations/bulk.hpp"

#include "catch.hpp"
#include "criteria/shipped.hpp"
#include "operations/coupons.hpp"
#include "operations/desk.hpp"
#include "operations/examining.hpp"
#include "operations/exported.hpp"
#include "operations/importing.hpp"
#include "operations/logging.hpp"

#include <atomic>
#include <nlohmann/json.hpp>
#include <thread>

using namespace beadbook;
using namespace beadbook::test;

using Json = nlohmann::json;

TEST_CASE("what was exported is imported unchanged, with numbers that interleave over the exams") {
    Desk desk;
    register_with_exam(desk, "T-1", 2);
    desk.write([](Writing &w) {
        const auto log = [&](int exam, const char *line) { log_lines(w, {"T-1", exam, line, "line"}); };
        log(1, "pore 0.04 at 1");
        log(2, "pore 0.05 at 2");
        log(1, "undercut l 3/8 w 0.01 at 1-1/2 face smooth # \"quoted\", with, commas");
        log(2, "slag from 2 to 2.4 across left 0.1");
        log(1, "pore 0.1 mid 5");
        withdraw_indication(w, "T-1", 4, "gone");
        ExamRequest spoilt;
        spoilt.coupon = "T-1";
        spoilt.method = Exam::PT;
        spoilt.conditions = {"dwell=10 min", "my own=a, \"b\""};
        spoilt.incomplete = "root not reached";
        record_exam(w, spoilt);
        register_coupon(w,
                        {"T-2", {{"units", "mm"}, {"form", "tube"}, {"seam", "girth"}, {"diameter", "50"}}});
        ExamRequest other;
        other.coupon = "T-2";
        other.method = Exam::PT;
        record_exam(w, other);
        log_lines(w, {"T-2", 0, "ri 1.5 at 3:30", "line"});
    });
    const Exported json = exported(desk.office, {});
    CHECK(json.coupons == 2);
    Desk by_json, by_sheets;
    const Imported taken = import_into(by_json, json.text);
    CHECK(taken.coupons == 2);
    CHECK(taken.exams == 4);
    CHECK(taken.indications == 5);
    CHECK(exported(by_json.office, {}).text == json.text);
    CHECK(numbers_of(by_json, "T-1", 1) == std::vector<int>{1, 3, 5});
    CHECK(numbers_of(by_json, "T-1", 2) == std::vector<int>{2});
    for (const Sheet sheet : {Sheet::coupons, Sheet::exams, Sheet::indications}) {
        const Exported table = exported(desk.office, sheet);
        import_into(by_sheets, table.text, sheet);
        CHECK(exported(by_sheets.office, sheet).text == table.text);
    }
    CHECK(exported(by_sheets.office, {}).text == json.text);
    CHECK_THAT(refusal_of(by_json, json.text), says("2 coupons cannot be taken, nothing was stored:"));
    CHECK_THAT(refusal_of(by_json, json.text), says("coupon 1 (T-1): coupon T-1 is registered already"));
}

TEST_CASE("finds and exams without a number get the next ones, and a number that was used is refused") {
    Desk desk;
    import_into(desk, file_of(R"([{"id": "N", "exams": [
        {"method": "RT", "date": "2026-11-20", "indications": [{"type": "crack"}, {"type": "crack", "number": 7}]},
        {"method": "PT", "date": "2026-11-20", "number": 3, "indications": [{"type": "crack", "number": 2}]}]}])"));
    CHECK(desk.book.coupon("N").exams[0].number == 3);
    CHECK(desk.book.coupon("N").exams[1].number == 4);
    CHECK(desk.book.coupon("N").exams[1].method == Exam::RT);
    CHECK(numbers_of(desk, "N", 4) == std::vector<int>{7, 8});
    CHECK(numbers_of(desk, "N", 3) == std::vector<int>{2});
    import_into(desk, "coupon,exam,number,type\nN,3,12,crack\nN,4,,lack of fusion\nN,3,10,crack\n",
                Sheet::indications);
    CHECK(numbers_of(desk, "N", 3) == std::vector<int>{2, 10, 12});
    CHECK(numbers_of(desk, "N", 4) == std::vector<int>{7, 8, 13});
    desk.write([](Writing &w) { withdraw_indication(w, "N", 13, "slip"); });
    const std::string refused = refusal_of(
        desk, "coupon,exam,number,type\nN,3,13,crack\nN,4,14,crack\nN,3,14,crack\n", Sheet::indications);
    CHECK_THAT(refused, says("row 2: coupon N has used indication number 13 already"));
    CHECK_THAT(refused, says("row 4: indication number 14 of coupon N stands twice"));
    CHECK_THAT(refusal_of(desk, "coupon,exam,method,date\nN,4,RT,2026-11-20\n", Sheet::exams),
               says("has used exam number 4 already"));
    CHECK_THAT(
        refusal_of(desk,
                   file_of(R"([{"id": "M", "exams": [{"method": "RT", "date": "2026-11-20", "number": 1},
                                            {"method": "PT", "date": "2026-11-20", "number": 1}]}])")),
        says("exam number 1 of coupon M stands twice"));
}

TEST_CASE("an import goes through the same door as register, exam and log") {
    Desk desk;
    const auto coupon = [](const Json &fields, const Json &exam = nullptr) {
        Json out{{"id", "N"}, {"fields", fields}};
        if (exam.is_object()) out["exams"] = nlohmann::json::array({exam});
        return file_of(Json::array({out}).dump());
    };
    const Json vt{{"method", "VT"}, {"date", "2026-11-20"}};
    const Json none = Json::object();
    const auto with = [&](const char *key, const Json &value) {
        Json out = vt;
        out[key] = value;
        return out;
    };
    const std::vector<std::pair<std::string, std::string>> rows{
        {coupon({{"criteria", "ufgs-15216"}}), "did you mean 'ufgs-15216n'?"},
        {coupon({{"criteria", "./no-such-file.yaml"}}), "is opened only if you say that it may be"},
        {coupon({{"criteria", "/etc/passwd"}}), "is opened only if you say that it may be"},
        {coupon(none, with("practice", "/etc/passwd")), "is opened only if you say that it may be"},
        {coupon({{"criteria", "iso-5817"}, {"class", "E"}}), "have no class 'E'"},
        {coupon({{"thickness", "0 in"}}), "is zero"},
        {coupon({{"note", "\u0007"}}), "control character"},
        {coupon(none, with("date", "2026-11-26")), "which is to come"},
        {coupon(none, with("date", "2026-02-30")), "no day of the calendar"},
        {coupon(none, with("method", "UT")), "is no method"},
        {coupon(none, with("practice", "asme-v-pt")), "is for PT, not for VT"},
        {coupon(none, with("practice", "asme-v-vtt")), "did you mean 'asme-v-vt'?"},
        {coupon(none, with("practice hash", std::string(64, 'a'))), "without the practice's name"},
        {coupon(none, with("conditions", {{"light", "far"}})), "does not begin with a number"},
        {coupon(none, with("conditions", {{"light", ""}})), "nothing given"},
        {coupon(none, {{"method", "VT"},
                       {"date", "2026-11-20"},
                       {"examiner", "A. Field"},
                       {"note", "crack at 3:00"},
                       {"found", 0},
                       {"finished by", "A. Field"}}),
         "reads like a find, and the exam is said to have found none"},
        {coupon({{"weld-length", "8 in"}}, with("indications", {{{"type", "crack"}, {"at", "9 in"}}})),
         "off the weld"},
        {coupon(none, with("indications", {{{"type", "crack"}, {"length", "1 in"}, {"width", "2 in"}}})),
         "the length is the longer of the two"},
    };
    for (const auto &[text, expected] : rows) {
        INFO(text);
        CHECK_THAT(refusal_of(desk, text), says(expected));
    }
    CHECK_THAT(
        refusal_of(desk, "coupon,criteria,class\nC-1,iso-5817,B\nC-2,iso-5817,E\nC-3,nothing,\n",
                   Sheet::coupons),
        says("2 rows cannot be taken, nothing was stored:\nrow 3: criteria iso-5817 have no class 'E'"));
    // A file of criteria is found again from any folder, as register does it.
    write_file(desk.file("own.yaml"), shipped_file("iso-5817.yaml"));
    const std::string own = coupon({{"criteria", desk.file("./own.yaml")}, {"class", "B"}});
    CHECK_THAT(refusal_of(desk, own), says("is opened only if you say that it may be"));
    import_into(desk, own, {}, nullptr, true);
    CHECK(desk.book.coupon("N").record.get("criteria") == desk.file("own.yaml"));
}

TEST_CASE("the doubts of exam and log travel with an import") {
    Desk desk;
    std::vector<std::string> notes;
    import_into(desk, file_of(R"([{"id": "N", "fields": {"process": "GTAW"}, "exams": [{"method": "VT",
        "date": "2026-11-20", "conditions": {"ligth": "1000 lx"}, "indications": [{"type": "slag inclusion"}]}]}])"),
                {}, &notes);
    REQUIRE(notes.size() == 3);
    CHECK_THAT(notes[0],
               says("coupon N: condition 'ligth' is kept as a name of your own; did you mean 'light'?"));
    CHECK_THAT(notes[1], says("coupon N: exam 1 (VT) is open: it does not say how many it found, or none"));
    CHECK_THAT(notes[2], says("coupon N: #1: slag, but GTAW has no flux"));
    std::string many = "coupon,exam,type,size\n";
    for (int i = 10; i < 40; ++i) many += "N,1,slag inclusion,0.0" + std::to_string(i) + " in\n";
    import_into(desk, many, Sheet::indications, &notes);
    REQUIRE(notes.size() == 21); // the first ones, and how many more
    CHECK(notes.back() == "and 10 more such notes");
}

TEST_CASE("an exam's practice has its text kept if it is shipped; of another nothing is said") {
    Desk desk;
    const auto with = [](const std::string &mark, const Json &exam) {
        return file_of(Json::array({{{"id", mark}, {"exams", {exam}}}}).dump());
    };
    Json exam{{"method", "VT"}, {"date", "2026-11-20"}, {"practice", "asme-v-vt"}};
    import_into(desk, with("A", exam));
    const ExamRecord taken = desk.office.coupon("A").exams[0];
    CHECK(taken.practice_hash == desk.catalogue.practice("asme-v-vt")->hash);
    CHECK(desk.book.ledger().criteria_text(taken.practice_hash).has_value());
    CHECK_THAT(taken.invalid, says("cannot be called valid without"));
    exam["practice"] = "somebody-elses";
    exam["practice hash"] = std::string(64, 'a');
    std::vector<std::string> notes;
    import_into(desk, with("B", exam), {}, &notes);
    CHECK_THAT(notes.at(0), says("the text of practice somebody-elses is not in this record"));
    CHECK_THAT(desk.office.coupon("B").exams[0].invalid, says("is not in this record"));
}

TEST_CASE("broken files are refused whole, and every bad coupon and row is named") {
    Desk desk;
    register_with_exam(desk, "T-1");
    CHECK_THAT(refusal_of(desk, file_of(R"([{"id": "N"},
 {"id": "M", "fields": {"thicknes": "1 in"}},
 {"id": "L", "exams": 3}, {"id": "N"}])")),
               says("3 coupons cannot be taken, nothing was stored:\n"
                    "2:25: coupon 2 (M): a coupon has no field 'thicknes'; did you mean 'thickness'?\n"
                    "3:23: coupon 3 (L): exams: expected a list, found 3\n"
                    "3:27: coupon 4 (N): coupon N is registered already, earlier in this file"));
    const std::vector<std::pair<std::string, std::string>> csv{
        {"", "the CSV is empty"},
        {"coupon,exam,typ\n", "unknown column 'typ'; did you mean 'type'?"},
        {"coupon,coupon\n", "stands twice"},
        {"coupon,type\nT-1,crack\n", "there is no column 'exam'"},
        {"coupon,exam,type\nT-1,1\n", "row 2: has 2 cells, the first row has 3"},
        {"coupon,exam,type\n,1,crack\n", "row 2: the row names no coupon"},
        {"coupon,exam,type\nT-1,x,crack\n", "expected a whole number"},
        {"coupon,exam,type\nT-1,0,crack\n", "expected a whole number"},
        {"coupon,exam,type\nT-1,,crack\n", "the row has no exam number"},
        {"coupon,exam,type\nT-1,9,crack\n", "has no exam 9"},
        {"coupon,exam,type\nT-2,1,crack\n", "there is no coupon 'T-2'; did you mean 'T-1'?"},
        {"coupon,exam,type\n\"T-1,1,crack\n", "a quote is out of place or not closed"},
        {"coupon,exam,type,left\nT-1,1,crack,no\n", "expected yes or nothing"},
        {"coupon,exam,type,at\nT-1,1,crack,99\nT-1,1,crak,1\n", "2 rows cannot be taken"},
    };
    for (const auto &[text, expected] : csv) {
        INFO(text);
        CHECK_THAT(refusal_of(desk, text, Sheet::indications), says(expected));
    }
    for (const char *conditions :
         {"[1]", "\"{\"\"a\"\":1}\"", "\"{\"\"a\"\":\"\"b\"\",\"\"a\"\":\"\"c\"\"}\"", "{"}) {
        INFO(conditions);
        CHECK_THAT(refusal_of(desk,
                              std::string("coupon,exam,method,date,conditions\nT-1,2,VT,2026-11-20,") +
                                  conditions + "\n",
                              Sheet::exams),
                   says("row 2: conditions: "));
    }
    std::string many = "coupon,exam,type\n";
    for (int i = 0; i < 50; ++i) many += "T-" + std::to_string(100 + i) + ",1,crack\n";
    const std::string refused = refusal_of(desk, many, Sheet::indications);
    CHECK_THAT(refused, says("50 rows cannot be taken"));
    CHECK_THAT(refused, says("\nand 30 more"));
    CHECK(std::count(refused.begin(), refused.end(), '\n') == 21);
}

TEST_CASE("an import takes no lock before all of it is checked") {
    Desk desk;
    register_with_exam(desk, "T-1");
    register_with_exam(desk, "T-2");
    auto prepared = prepare_import(desk.office, {Sheet::indications, rows("T-1", 5)});
    Book other(desk.path(), Ledger::Mode::write);
    Office their_office(other, desk.catalogue);
    const auto they_log = [&](const char *mark) {
        Writing writing(their_office, "other");
        log_lines(writing, {mark, 0, "crack at 1", "line"});
        writing.commit();
    };
    SECTION("somebody logs on another coupon meanwhile") {
        they_log("T-2");
        const std::string head = other.ledger().head();
        desk.write([&](Writing &w) { return store_import(w, std::move(prepared)); });
        CHECK(numbers_of(desk, "T-1", 1) == std::vector<int>{1, 2, 3, 4, 5});
        CHECK(desk.book.history("T-1").at(2).previous == head);
    }
    SECTION("somebody logs on the same coupon meanwhile: the numbers follow theirs") {
        they_log("T-1");
        desk.write([&](Writing &w) { return store_import(w, std::move(prepared)); });
        CHECK(numbers_of(desk, "T-1", 1) == std::vector<int>{1, 2, 3, 4, 5, 6});
        CHECK(desk.book.history("T-1").at(2).who == "other");
        CHECK(desk.book.history("T-1").at(3).who == "tester");
    }
    SECTION("somebody shortens the weld meanwhile: what no longer lies on it is refused, all of it") {
        desk.write([](Writing &w) {
            change_coupon(w, {{"T-1", {{"weld-length", "2 in"}}}, {}, "measured again"});
        });
        CHECK_THROWS_WITH(desk.write([&](Writing &w) { return store_import(w, std::move(prepared)); }),
                          says("off the weld"));
        CHECK(numbers_of(desk, "T-1", 1).empty());
    }
    SECTION("somebody registers a coupon of the file meanwhile") {
        auto coupons = prepare_import(desk.office, {Sheet::coupons, "coupon\nT-3\nT-4\n"});
        desk.write([](Writing &w) { register_coupon(w, {"T-4", {}}); });
        CHECK_THROWS_WITH(desk.write([&](Writing &w) { return store_import(w, std::move(coupons)); }),
                          says("row 3: coupon T-4 is registered already"));
        CHECK_FALSE(desk.book.knows_coupon("T-3"));
    }
    CHECK(desk.book.ledger().verify().faults.empty());
}

TEST_CASE("others read while a long import is being stored") {
    Desk desk;
    register_with_exam(desk, "T-1");
    auto prepared = prepare_import(desk.office, {Sheet::indications, rows("T-1", 5'000)});
    Book other(desk.path(), Ledger::Mode::read);
    Writing writing(desk.office, "tester");
    store_import(writing, std::move(prepared));
    CHECK(other.coupon("T-1").indications.empty()); // not yet, and not locked out
    writing.commit();
    CHECK(other.coupon("T-1").indications.size() == 5'000);
}

TEST_CASE("others read and log while a long import is prepared") {
    Desk desk;
    register_with_exam(desk, "T-1");
    register_with_exam(desk, "T-2");
    std::atomic<bool> preparing{true};
    std::atomic<int> logged{0};
    std::thread other([&] {
        Desk elsewhere; // its own clock and catalogue
        Book book(desk.path(), Ledger::Mode::write);
        Office office(book, elsewhere.catalogue);
        while (preparing) {
            Writing writing(office, "other");
            LogRequest again{"T-2", 0, "crack at 1", "line"};
            again.again = true;
            log_lines(writing, again);
            writing.commit();
            ++logged;
            std::this_thread::sleep_for(
                std::chrono::milliseconds(1)); // a writer without pause keeps readers out
            if (book.coupon("T-2").indications.empty()) break;
        }
    });
    while (logged == 0) std::this_thread::yield();
    const int before = logged;
    auto prepared = prepare_import(desk.office, {Sheet::indications, rows("T-1", 10'000)});
    const int after = logged;
    preparing = false;
    other.join();
    CHECK(after > before); // they wrote while it was read and checked
    desk.write([&](Writing &w) { return store_import(w, std::move(prepared)); });
    CHECK(desk.book.coupon("T-1").indications.size() == 10'000);
    CHECK(desk.book.coupon("T-2").indications.size() == static_cast<std::size_t>(logged));
    CHECK(desk.book.ledger().verify().faults.empty());
}
