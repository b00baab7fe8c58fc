#include "operations/moving.hpp"

#include "booth.hpp"
#include "catch.hpp"
#include "operations/looking.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

Done<Moved> moved(Booth &booth, int number, int exam, const std::string &to = "",
                  const std::string &why = "wrong film") {
    return booth.write([&](Writing &w) { return move_indication(w, {"T-1", number, exam, to, why}); });
}

Refusal refused_to_move(Booth &booth, int number, int exam, const std::string &to = "",
                        const std::string &why = "wrong film") {
    return booth.refusal([&] { moved(booth, number, exam, to, why); });
}

} // namespace

TEST_CASE("a find that is moved within its coupon keeps its number, and both exams show it") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.log("pore 0.04 at 1\ncrack 0.2 at 3");
    booth.finish();
    const auto done = moved(booth, 2, 2);
    CHECK(done.value.from_exam == 3);
    CHECK(done.value.now.number == 2);
    CHECK(done.value.now.exam == 2);
    // The MT was finished with none and the RT with two.
    REQUIRE(done.notes.size() == 4);
    CHECK_THAT(done.notes[0],
               says("exam 3 (RT) of coupon T-1 was finished with 2 found, and 1 is on record"));
    CHECK_THAT(done.notes[1],
               says("exam 2 (MT) of coupon T-1 was finished with 0 found, and 1 is on record"));
    CHECK_THAT(done.notes[2], says("#2 was found by RT and is judged as found by MT from now on"));
    CHECK_THAT(done.notes[3], says("the move changes the verdict on coupon T-1 by"));
    CHECK_THAT(done.notes[3], says("was reject and is cannot say"));
    const CouponState state = booth.office.coupon("T-1");
    CHECK(state.needed_indication(2).exam == 2);
    CHECK(state.needed_indication(2).moved_from == MovedFrom{"T-1", 3, 2, "wrong film"});
    CHECK(state.finds_of(3) == 1);
    const auto away = state.moved_away();
    REQUIRE(away.size() == 1);
    CHECK(away[0].exam == 3);
    CHECK(away[0].to_exam == 2);
    for (const int exam : {2, 3}) CHECK_FALSE(state.needed_exam(exam).done().counts);
    const Entry last = history_of_coupon(booth.office, "T-1").back();
    CHECK(last.reason == "wrong film");
    CHECK(last.supersedes.has_value());
    // What is corrected afterwards is still known to have been moved.
    booth.write([](Writing &w) { correct_indication(w, "T-1", 2, "crack 0.3 at 3", "scale"); });
    CHECK(booth.office.coupon("T-1").needed_indication(2).moved_from.has_value());
}

TEST_CASE("within one writing both exams of a moved find are as they are read afterwards") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.log("crack 0.2 at 3");
    booth.finish();
    booth.write([](Writing &w) {
        move_indication(w, {"T-1", 1, 2, "", "wrong film"});
        CHECK(w.coupon("T-1").needed_exam(2).contradicts);
        CHECK(w.coupon("T-1").needed_exam(3).lacks);
    });
}

TEST_CASE("a find that is moved to another coupon is read anew there and gets the next number") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.coupon("T-2", {{"weld-length", "4in"}});
    booth.exams("T-2");
    booth.log("pore 0.04 at 1", "T-2");
    booth.log("crack 0.2 at 3\npore 0.04 at 7");
    const auto done = moved(booth, 1, 0, "T-2");
    CHECK(done.value.coupon == "T-2");
    CHECK(done.value.now.number == 2);
    CHECK(done.value.now.exam == 3); // its only open one
    // One method, but neither verdict is what it was.
    REQUIRE(done.notes.size() == 2);
    CHECK_THAT(done.notes[0], says("the move changes the verdict on coupon T-1 by"));
    CHECK_THAT(done.notes[0], says("was reject and is cannot say"));
    CHECK_THAT(done.notes[1], says("the move changes the verdict on coupon T-2 by"));
    CHECK_THAT(done.notes[1], says("was cannot say and is reject"));
    const CouponState from = booth.office.coupon("T-1"), to = booth.office.coupon("T-2");
    CHECK(from.indication(1) == nullptr);
    REQUIRE(from.moved_away().size() == 1);
    CHECK(from.moved_away()[0].coupon == "T-2");
    CHECK(from.moved_away()[0].to_number == 2);
    CHECK(from.moved_away()[0].why == "wrong film");
    CHECK(from.last_indication == 2); // the number is not given again
    CHECK(to.needed_indication(2).moved_from == MovedFrom{"T-1", 3, 1, "wrong film"});
    CHECK(to.moved_away().empty());
    CHECK_THAT(refused_to_move(booth, 2, 3, "T-2").what(),
               says("#2 does not fit on coupon T-2: '7 in' is off the weld"));
    CHECK_THAT(refused_to_move(booth, 1, 3, "T-2").what(), says("has no indication #1"));
}

TEST_CASE("a move says where to, and why") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.log("crack 0.2 at 3");
    CHECK(field_of(refused_to_move(booth, 1, 0)) == "give exam");
    CHECK(field_of(refused_to_move(booth, 1, 2, "", " ")) == "give why");
    CHECK_THAT(refused_to_move(booth, 1, 3).what(), says("#1 lies under exam 3 already"));
    CHECK_THAT(refused_to_move(booth, 1, 9).what(), says("has no exam 9"));
    CHECK_THAT(refused_to_move(booth, 1, 0, "T-9").what(), says("there is no coupon 'T-9'"));
    CHECK_THAT(refused_to_move(booth, 5, 2).what(), says("has no indication #5"));
}

TEST_CASE("a find that nobody would believe on the other coupon is asked about there") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.coupon("T-2", {{"thickness", "0.01in"}});
    booth.exams("T-2");
    for (const char *mark : {"T-1", "T-2"}) booth.exam(Exam::VT, {}, mark);
    booth.log("undercut l 0.2 d 0.1 at 3 smooth", "T-1", 4);
    const Refusal refusal = refused_to_move(booth, 1, 4, "T-2");
    CHECK(field_of(refusal) == "give sure");
    CHECK_THAT(refusal.what(), says("depth 0.1 in, thicker member 0.01 in"));
    booth.write([](Writing &w) { return move_indication(w, {"T-1", 1, 4, "T-2", "wrong piece", true}); });
    CHECK(booth.office.coupon("T-2").needed_indication(1).sure ==
          std::vector<std::string>{"depth-over-wall"});
}
