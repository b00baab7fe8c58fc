// How much is typed for a stack of coupons and for a class: the scripts of typed/, run for real by the
// shipped program.
#include "catch.hpp"
#include "operations/desk.hpp"
#include "temporary.hpp"
#include "typed.hpp"

#include <filesystem>

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// Runs all of a script; each must be done. What it cost.
TypingCost run_script(const std::string &name, const TemporaryFolder &folder) {
    const auto all = typed_in(read_file(BEADBOOK_SOURCE "/tests/journeys/typed/" + name));
    REQUIRE_FALSE(all.empty());
    for (const auto &one : all) {
        const Typing done = type(one, folder.file(""), BEADBOOK_PROGRAM);
        INFO(one.line << "\n" << done.out);
        REQUIRE((done.code == 0 || done.code == 1)); // 1: a judged coupon is rejected
    }
    return counted(all);
}

/// Fifteen coupons, of each a VT and an MT that is finished, and 23 finds.
void check_stack(const TemporaryFolder &folder) {
    OpenBook desk(folder.file("book.db"), Ledger::Mode::read);
    std::size_t exams = 0, finds = 0;
    CHECK(desk.book.coupons().size() == 15);
    for (const auto &mark : desk.book.coupons()) {
        const CouponState coupon = desk.office.coupon(mark);
        for (const auto &exam : coupon.exams) exams += exam.finished && exam.examiner == "A. Field";
        finds += coupon.indications.size();
    }
    CHECK(exams == 30);
    CHECK(finds == 23);
}

} // namespace

TEST_CASE("a stack of 15 coupons with 30 exams and 23 finds is at most 900 keys by commands", "[journeys]") {
    const TemporaryFolder folder;
    const TypingCost cost = run_script("stack-by-commands.txt", folder);
    INFO(cost.keys << " keys, " << cost.commands << " commands");
    CHECK(cost.keys <= 900);
    check_stack(folder);
}

TEST_CASE("the same stack is at most 700 keys at the prompt", "[journeys]") {
    const TemporaryFolder folder;
    const TypingCost cost = run_script("stack-at-prompt.txt", folder);
    INFO(cost.keys << " keys, " << cost.commands << " commands");
    CHECK(cost.keys <= 700);
    check_stack(folder);
}

TEST_CASE("a class of 60 is at most 12 commands from enrolling to a page of results", "[journeys]") {
    const TemporaryFolder folder;
    std::string table = "mark,name\n";
    for (int n = 1; n <= 60; ++n)
        table += "L" + std::to_string(n) + ",\"Learner, " + std::to_string(n) + ".\"\n";
    write_file(folder.file("class.csv"), table);
    const TypingCost cost = run_script("class-of-60.txt", folder);
    CHECK(cost.commands <= 12);
    CHECK_THAT(read_file(folder.file("class.html")), says("C-60") && says("L60"));
    OpenBook desk(folder.file("book.db"), Ledger::Mode::read);
    CHECK(desk.book.welders().size() == 60);
    std::size_t passed = 0, failed = 0;
    for (const auto &mark : desk.book.coupons()) {
        const auto grade = desk.office.coupon(mark).grade;
        REQUIRE(grade);
        ++(grade->passed ? passed : failed);
    }
    CHECK(passed == 58);
    CHECK(failed == 2);
}

TEST_CASE("keys are counted as they are typed", "[journeys]") {
    const auto all = typed_in("# why\n% before\n$ ab c\n> d\nxy\n\" z\n^D\n");
    REQUIRE(all.size() == 3);
    CHECK(all[1].keys() == 5);
    CHECK(all[2].keys() == 2 + 3 + 4 + 1);
    CHECK(all[2].on_terminal);
    CHECK(counted(all).keys == 15);
    CHECK(counted(all).commands == 2);
}
