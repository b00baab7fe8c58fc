#include "operations/many.hpp"

#include "booth.hpp"
#include "catch.hpp"
#include "operations/registered_like.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

Done<std::vector<CouponRecord>> registered(Booth &booth, const CouponsRequest &request) {
    return booth.write([&](Writing &w) { return register_coupons(w, request); });
}

ExamRequest found_nothing() {
    ExamRequest exam;
    exam.examiner = "A. Field";
    exam.level = "II";
    exam.found = 0;
    return exam;
}

} // namespace

TEST_CASE("coupons like another take what it says of the weld, and nothing that is its own") {
    Booth booth;
    registered(booth, {{"F-1"},
                       {{"joint", "groove"},
                        {"thickness", "0.065 in"},
                        {"welder", "W0"},
                        {"cohort", "autumn-2026"},
                        {"welded", "2026-11-20"},
                        {"mechanical", "passed"}},
                       "",
                       false});
    const auto done =
        registered(booth, {{"T-1", "T-2"}, {{"welder", "W1..W2"}, {"joint", "fillet"}}, "F-1", false});
    REQUIRE(done.value.size() == 2);
    CHECK(done.value[0].get("welder") == "W1");
    CHECK(done.value[1].get("welder") == "W2");
    CHECK(done.value[1].get("joint") == "fillet"); // what is given wins
    CHECK(done.value[1].get("thickness") == "0.065 in");
    CHECK(done.value[1].get("cohort") == "autumn-2026"); // a cohort welds the same
    for (const char *own : {"welded", "mechanical"}) CHECK(done.value[1].get(own).empty());
    REQUIRE(done.notes.size() == 1);
    CHECK(done.notes[0] == "like F-1: cohort autumn-2026 and thickness 0.065 in; to be told anew: welded");
}

TEST_CASE("once a coupon is corrected, those like it that say still what it said are named") {
    Booth booth;
    registered(booth, {{"T-1"}, {{"joint", "groove"}, {"thickness", "0.065 in"}}, "", false});
    registered(booth, {{"T-2", "T-3"}, {}, "T-1", false});
    registered(booth, {{"T-4"}, {}, "T-3", false});
    registered(booth, {{"T-5"}, {{"thickness", "0.2 in"}}, "T-1", false});
    registered(booth, {{"T-6"}, {{"joint", "groove"}, {"thickness", "0.065 in"}}, "", false});
    const auto change = [&](const std::vector<std::string> &marks, const std::string &thickness) {
        return booth
            .write([&](Writing &w) {
                return change_coupons(w, marks, {{"", {{"thickness", thickness}}}, {}, "measured again"});
            })
            .notes;
    };
    CHECK(change({"T-1"}, "0.071 in") ==
          std::vector<std::string>{"coupons T-2 to T-4 were registered like T-1 and still say thickness "
                                   "0.065 in; where that is wrong of them too, change it there"});
    const auto said = [&](const char *mark) {
        return said_before_correction(booth.office, booth.office.coupon(mark).record);
    };
    CHECK(said("T-2") == "registered like T-1 and still says thickness 0.065 in (T-1 now: 0.071 in)");
    CHECK(said("T-4") == "registered like T-3 and still says thickness 0.065 in (T-1 now: 0.071 in)");
    for (const char *other : {"T-1", "T-5", "T-6"}) CHECK(said(other).empty());
    CHECK(change({"T-2", "T-3", "T-4"}, "0.071 in").empty());
    for (const char *mark : {"T-2", "T-3", "T-4"}) CHECK(said(mark).empty());
    booth.write([](Writing &w) { return withdraw_coupon(w, "T-2", "welded anew"); });
    CHECK(change({"T-1"}, "0.08 in").size() == 1);
}

TEST_CASE("of many none is stored if one is bad, and every bad one is named") {
    Booth booth;
    registered(booth, {{"T-2"}, {}, "", false});
    registered(booth, {{"T-4"}, {}, "", false});
    const Refusal e = booth.refusal([&] {
        registered(booth, {{"T-1", "T-2", "T-3", "T-4"}, {}, "", false});
    });
    CHECK_THAT(e.what(), says("2 of 4 cannot be taken, nothing was stored:"));
    CHECK_THAT(e.what(), says("\nT-2: coupon T-2 is registered already; T-3 is free"));
    CHECK_THAT(e.what(), says("\nT-4: coupon T-4 is registered already; T-5 is free"));
    CHECK_FALSE(booth.book.knows_coupon("T-1"));
    CHECK_THAT(booth.refusal([&] {
                        registered(booth, {{"U-1", "U-2"}, {{"welder", "W1..W3"}}, "", false});
                    })
                   .what(),
               says("3 welders for 2 coupons"));
}

TEST_CASE("the same slip of many coupons is mended at once, or of none") {
    Booth booth;
    registered(booth, {{"T-1", "T-2", "T-3"}, {{"thickness", "0.065 in"}}, "", false});
    const auto change = [&](const std::vector<std::string> &marks, const Booth::Fields &fields) {
        return booth.write([&](Writing &w) {
            return change_coupons(w, marks, {{"", fields}, {}, "measured again"});
        });
    };
    const auto done = change({"T-1", "T-3"}, {{"thickness", "0.071 in"}});
    REQUIRE(done.value.size() == 2);
    CHECK(booth.office.coupon("T-3").record.get("thickness") == "0.071 in");
    CHECK(booth.office.coupon("T-2").record.get("thickness") == "0.065 in");
    CHECK(booth.book.history("T-1").back().reason == "measured again");
    const std::string said =
        booth.refusal([&] {
                 change({"T-1", "T-2", "T-9"}, {{"thickness", "0.071 in"}});
             })
            .what();
    CHECK_THAT(said, says("2 of 3 cannot be taken, nothing was stored:"));
    CHECK_THAT(said, says("\nT-1: this changes nothing") && says("\nT-9: there is no coupon 'T-9'"));
    CHECK(booth.office.coupon("T-2").record.get("thickness") == "0.065 in");
}

TEST_CASE("one exam of many coupons is one of each") {
    Booth booth;
    registered(booth, {{"T-1", "T-2"}, {}, "", false});
    ExamRequest exam = found_nothing();
    const auto done = booth.write([&](Writing &w) { return record_exams(w, {"T-1", "T-2"}, exam); });
    CHECK(done.value.exams.size() == 2);
    for (const char *mark : {"T-1", "T-2"}) CHECK(booth.office.coupon(mark).exams.size() == 1);
    CHECK_THAT(booth
                   .refusal([&] {
                       booth.write([&](Writing &w) { return record_exams(w, {"T-1", "X", "Y"}, exam); });
                   })
                   .what(),
               says("2 of 3 cannot be taken"));
    CHECK(booth.office.coupon("T-1").exams.size() == 1);
    const auto two = booth.write([&](Writing &w) {
        return record_exams(w, {"T-1", "T-2"}, exam, {Exam::PT, Exam::MT});
    });
    CHECK(two.value.coupons == std::vector<std::string>{"T-1", "T-1", "T-2", "T-2"});
    CHECK(booth.office.coupon("T-2").exams[1].method == Exam::PT);
    CHECK(booth.office.coupon("T-2").exams[2].method == Exam::MT);
}

TEST_CASE("an exam of many coupons stands in place of the last by its method on each") {
    Booth booth;
    registered(booth, {{"T-1", "T-2"}, {}, "", false});
    ExamRequest exam = found_nothing();
    booth.write([&](Writing &w) { return record_exams(w, {"T-2"}, exam, {Exam::PT}); });
    booth.write([&](Writing &w) { return record_exams(w, {"T-1", "T-2"}, exam); });
    exam.replaces_last = true;
    exam.procedure = "VT-7";
    exam.why = "the procedure was left out";
    booth.write([&](Writing &w) { return record_exams(w, {"T-1", "T-2"}, exam); });
    CHECK(booth.office.coupon("T-1").needed_exam(1).procedure == "VT-7");
    CHECK(booth.office.coupon("T-2").needed_exam(2).procedure == "VT-7");
    CHECK(booth.office.coupon("T-2").needed_exam(1).procedure.empty());
    const Refusal none = booth.refusal([&] {
        booth.write([&](Writing &w) { return record_exams(w, {"T-1", "T-2"}, exam, {Exam::PT}); });
    });
    CHECK_THAT(none.what(), says("coupon T-1 has no PT that another could stand in place of"));
    CHECK(booth.office.coupon("T-2").needed_exam(1).procedure.empty());
}

TEST_CASE("a coupon like another tells what it took over alone, and no weld thickness of another wall") {
    Booth booth;
    booth.put(
        "F-1",
        {{"joint", "groove"}, {"thickness", "0.065in"}, {"weld-thickness", "full"}, {"magnetic", "no"}});
    const auto like = [&](const std::map<std::string, std::string> &fields) {
        return booth.write([&](Writing &w) { return register_coupons(w, {{"F-2"}, fields, "F-1", false}); });
    };
    const Refusal thicker = booth.refusal([&] { like({{"thickness", "0.09in"}}); });
    CHECK(thicker.field() == "weld-thickness");
    CHECK(thicker.example() == "full");
    CHECK_THAT(thicker.what(), says("weld-thickness is 0.065in as of coupon F-1"));
    const auto done = like({{"thickness", "0.09in"}, {"weld-thickness", "full"}, {"magnetic", "yes"}});
    CHECK(done.notes.at(0) == "like F-1: joint groove");
    CHECK(done.value.at(0).get("weld-thickness") == "0.09in");
}
