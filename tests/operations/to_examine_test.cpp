#include "operations/to_examine.hpp"

#include "booth.hpp"
#include "catch.hpp"
#include "operations/coupons.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// "T-1 open 1 missing 2", one a coupon that waits.
std::vector<std::string> waiting(ExamBoard &board, Booth &booth, const std::string &person = "") {
    std::vector<std::string> out;
    for (const auto &one : board.look(booth.office, person, 100).coupons)
        out.push_back(one.coupon.id + " open " + std::to_string(one.open.size()) + " missing " +
                      std::to_string(one.missing.size()) + (one.unsaid ? " unsaid" : "") +
                      (one.mine ? " mine" : ""));
    return out;
}

/// By the coupons themselves, without their kept lines.
std::vector<std::string> by_the_coupons(Booth &booth) {
    std::vector<std::string> open, rest;
    for (const auto &mark : booth.office.book().coupons())
        if (const auto one = to_examine(booth.office, booth.office.coupon(mark), ""))
            (one->open.empty() ? rest : open)
                .push_back(mark + " open " + std::to_string(one->open.size()) + " missing " +
                           std::to_string(one->missing.size()));
    open.insert(open.end(), rest.begin(), rest.end());
    return open;
}

} // namespace

TEST_CASE("the board says of kept lines what the coupons say themselves", "[lines]") {
    Booth booth;
    for (const std::string mark : {"T-1", "T-2", "T-3", "T-4"}) booth.coupon(mark, {});
    booth.exams("T-2");
    booth.exams("T-3");
    booth.finish(3, "T-3");
    booth.write([](Writing &w) { withdraw_coupon(w, "T-4", "cut up"); });
    ExamBoard board;
    const auto first = waiting(board, booth);
    CHECK(first == by_the_coupons(booth));
    REQUIRE(first.size() == 2);
    CHECK(first[0].starts_with("T-2 open 1"));
    CHECK(first[1].starts_with("T-1 open 0"));

    booth.reopen(3, "T-3");
    booth.finish(3, "T-2");
    booth.coupon("T-5", {});
    const auto next = waiting(board, booth);
    CHECK(next == by_the_coupons(booth));
    REQUIRE(next.size() == 3);
    CHECK(next[0].starts_with("T-3 open 1"));
    // One that looks for the first time reads all lines, the other only those of what changed.
    ExamBoard fresh;
    CHECK(waiting(fresh, booth) == next);
}

TEST_CASE("the board shows what is unsaid although all was done", "[lines]") {
    Booth booth;
    booth.coupon("T-1", {{"thickness", ""}});
    booth.exams();
    booth.finds("gas pore 0.03 at 2"); // how large one may be hangs on the thickness
    REQUIRE(booth.verdict() == Verdict::cannot_say);
    ExamBoard board;
    CHECK(waiting(board, booth) == std::vector<std::string>{"T-1 open 0 missing 0 unsaid"});
}

TEST_CASE("the exam that a coupon needs first is the one that its set asks, VT where that is among them") {
    Booth booth;
    const auto first = [&](const std::string &mark, const std::map<std::string, std::string> &fields) {
        booth.write([&](Writing &w) { return register_coupon(w, {mark, fields}); });
        return first_exam(booth.office, booth.office.coupon(mark));
    };
    CHECK(first("A-1", {{"criteria", "iso-23277"}, {"class", "1"}}) == "PT");
    CHECK(first("A-2", {{"criteria", "iso-23278"}}) == "MT"); // in whatever class
    CHECK(first("A-3", {{"criteria", "asme-b31.3"}}) == "VT");
    CHECK(first("A-4", {}) == "VT");
}

TEST_CASE("of a choice of methods none is to be begun while another of them is open") {
    Booth booth;
    booth.coupon("T-1", {{"criteria", "aws-d17.1"}, {"class", "B"}});
    const auto to_begin = [&] {
        const auto one = to_examine(booth.office, booth.office.coupon("T-1"), "");
        return one ? one->to_begin() : std::vector<std::string>{};
    };
    CHECK(to_begin() == std::vector<std::string>{"VT", "MT", "PT"});
    booth.exam(Exam::MT);
    CHECK(to_begin() == std::vector<std::string>{"VT"});
}

TEST_CASE("from an open exam one goes to those by the same method and examiner before and after it") {
    Booth booth;
    for (const std::string mark : {"T-1", "T-2", "T-3", "T-4"}) booth.coupon(mark, {});
    for (const std::string mark : {"T-1", "T-2", "T-4"}) booth.exam(Exam::VT, {}, mark);
    booth.exam(Exam::MT, {}, "T-3");
    booth.exam(
        Exam::VT, [](ExamRequest &request) { request.examiner = "B. Reed"; }, "T-3");
    ExamBoard board;
    const auto beside = [&](const std::string &mark, int number) {
        const auto out = open_beside(board.look(booth.office, "A. Field", 100), mark,
                                     booth.office.coupon(mark).needed_exam(number));
        return (out.before ? out.before->mark : "none") + " " + (out.after ? out.after->mark : "none");
    };
    CHECK(beside("T-1", 1) == "none T-2");
    CHECK(beside("T-2", 1) == "T-1 T-4");
    CHECK(beside("T-4", 1) == "T-2 none");
    CHECK(beside("T-3", 1) == "none none");
}
