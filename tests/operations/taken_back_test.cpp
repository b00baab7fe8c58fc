#include "operations/taken_back.hpp"

#include "catch.hpp"
#include "operations/booth.hpp"
#include "operations/moving.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// What was on record under the exam that was replaced last.
std::vector<int> finds_then(Booth &booth) {
    const auto all = taken_back(booth.office, booth.office.coupon("T-1").record);
    const auto last = std::find_if(all.rbegin(), all.rend(),
                                   [](const TakenBack &one) { return one.kind == TakenBack::Kind::exam; });
    REQUIRE(last != all.rend());
    return last->finds;
}

} // namespace

TEST_CASE("of an exam that was changed only what was on record under it before is told") {
    Booth booth;
    booth.coupon();
    booth.exam(Exam::VT);
    booth.exam(Exam::MT);
    const auto changed = [&](const std::string &condition) {
        booth.exam(Exam::MT, [&](ExamRequest &r) {
            r.replaces = 2;
            r.conditions = {condition};
            r.why = "typed wrong";
        });
    };
    booth.log("undercut l 0.2 at 1", "T-1", 1);
    changed("light=1000 lx");
    CHECK(finds_then(booth).empty());
    booth.write([](Writing &w) {
        MoveRequest move;
        move.coupon = "T-1";
        move.number = 1;
        move.exam = 2;
        move.why = "the other exam";
        return move_indication(w, move);
    });
    CHECK(finds_then(booth).empty()); // it was moved there afterwards
    changed("light=1100 lx");
    CHECK(finds_then(booth) == std::vector<int>{1});
}
