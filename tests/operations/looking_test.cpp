#include "operations/looking.hpp"

#include "booth.hpp"
#include "catch.hpp"
#include "operations/welders.hpp"

#include <algorithm>

using namespace beadbook;
using namespace beadbook::test;

TEST_CASE("a list of coupons has their exams, finds, verdict and grade, or why there is no verdict") {
    Booth booth;
    CHECK(list_coupons(booth.office).empty());
    booth.coupon("B-1", {{"welder", "L1"}});
    booth.coupon("A-1", {{"welder", "L2"}, {"criteria", ""}, {"class", ""}});
    booth.exams("B-1");
    booth.log("gas pore 0.02 at 2\ngas pore 0.03 at 4", "B-1");
    booth.write([](Writing &w) { withdraw_indication(w, "B-1", 1, "gone"); });
    booth.finish(3, "B-1");
    booth.write([](Writing &w) { grade_coupon(w, {"B-1", true, "", {}}); });
    const auto list = list_coupons(booth.office);
    REQUIRE(list.size() == 2);
    CHECK(list[1].record.id == "A-1"); // in the order of registration
    CHECK(list[1].exams.empty());
    CHECK_FALSE(list[1].verdict);
    CHECK(list[1].why_not == "no criteria");
    CHECK_FALSE(list[1].grade);
    std::vector<Exam> methods;
    for (const auto &exam : list[0].exams) methods.push_back(exam.method);
    CHECK(methods == std::vector<Exam>{Exam::VT, Exam::MT, Exam::RT});
    CHECK(list[0].indications == 1);
    CHECK(list[0].verdict == Verdict::accept);
    CHECK(list[0].why_not.empty());
    CHECK(list[0].grade->passed);

    const auto of_one = list_coupons(booth.office, {"L1"});
    REQUIRE(of_one.size() == 1);
    CHECK(of_one[0].record.id == "B-1");
    CHECK(list_coupons(booth.office, {"L"}).empty());
}

TEST_CASE("the verdict of a list is a fresh one, not the one that was stored") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.finish();
    booth.write([](Writing &w) { judge_and_keep(w, "T-1"); });
    booth.finds("crack l 0.2 at 2");
    CHECK(list_coupons(booth.office)[0].verdict == Verdict::reject);
    CHECK(booth.office.coupon("T-1").verdicts.back().verdict_of("2") == "accept");
}

TEST_CASE("a criteria file that is gone keeps a list from nothing") {
    Booth booth;
    write_file(booth.file("own.yaml"),
               "set: own\ntitle: t\nedition: e\nunits: in\nclasses: [A]\nrules:\n"
               "  - {id: r, types: porosity, exams: VT, measure: size, at most: 1/16 in, clause: c, "
               "standing: {house: x}}\n");
    booth.put("A-1", {{"criteria", booth.file("own.yaml")}});
    booth.exam(Exam::VT, Booth::found_none, "A-1");
    booth.coupon("B-1");
    CHECK(list_coupons(booth.office)[0].verdict == Verdict::accept);
    std::filesystem::remove(booth.file("own.yaml"));
    OpenBook later(booth.path(), Ledger::Mode::read);
    const auto list = list_coupons(later.office);
    REQUIRE(list.size() == 2);
    CHECK_FALSE(list[0].verdict);
    CHECK_THAT(list[0].why_not, says("cannot be read"));
    CHECK(list[1].verdict == Verdict::cannot_say);
}

TEST_CASE("a history holds every entry, oldest first, of that coupon or welder alone") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.coupon("T-2");
    booth.log("gas pore 0.02 at 2");
    booth.write([](Writing &w) { correct_indication(w, "T-1", 1, "gas pore 0.03 at 2", "scale"); },
                "R. Quay");
    booth.write([](Writing &w) { enrol(w, {"T-1", "J. Reef", {}, {}, ""}); });
    std::vector<std::string> kinds;
    const auto history = history_of_coupon(booth.office, "T-1");
    for (const auto &entry : history) kinds.push_back(entry.kind);
    CHECK(kinds == std::vector<std::string>{"coupon", "exam", "exam", "exam", "indication", "indication"});
    CHECK(std::is_sorted(history.begin(), history.end(),
                         [](const Entry &a, const Entry &b) { return a.seq < b.seq; }));
    CHECK(history.back().who == "R. Quay");
    CHECK(history.back().reason == "scale");
    CHECK(history.back().supersedes == history[4].seq);
    const auto welder = history_of_welder(booth.office, "T-1");
    REQUIRE(welder.size() == 1);
    CHECK(welder[0].kind == "welder");
    CHECK_THAT(booth.refusal([&] { history_of_coupon(booth.office, "T-9"); }).what(),
               says("there is no coupon 'T-9'"));
    CHECK_THAT(booth.refusal([&] { history_of_welder(booth.office, "T-2"); }).what(),
               says("there is no welder 'T-2'"));
}

TEST_CASE("a coupon can be seen as it stood before an entry") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.log("gas pore 0.02 at 2\ngas pore 0.03 at 4");
    const auto second = booth.office.coupon("T-1").indication_seq.at(2);
    booth.write([](Writing &w) { withdraw_indication(w, "T-1", 1, "gone"); });
    const CouponState then = booth.office.coupon("T-1", second);
    REQUIRE(then.indications.size() == 1);
    CHECK(then.indications[0].number == 1);
    CHECK(booth.office.coupon("T-1").indications[0].number == 2);
}
