#include "catch.hpp"
#include "operations/exam_validity.hpp"

#include "put.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// A VT by the shipped practice, in light of so much, with its text kept as an operation would keep it.
ExamRecord visual(Desk &desk, int number, const std::string &light) {
    const auto practice = desk.catalogue.practice("asme-v-vt");
    desk.write([&](Writing &writing) {
        writing.ledger().keep_criteria(practice->hash, practice->name, practice->text);
    });
    ExamRecord out;
    out.number = number;
    out.method = Exam::VT;
    out.date = parse_day("2026-11-20");
    out.examiner = "A. Field";
    out.practice = practice->name;
    out.practice_hash = practice->hash;
    for (const char *one : {"distance=20 in", "angle=45 deg", "vision=2026-06-01", "vision test=J1"})
        add_condition(out, one);
    if (!light.empty()) add_condition(out, "light=" + light);
    return out;
}

const ConditionFinding &finding_on(const ExamValidity &exam, const std::string &word) {
    for (const auto &finding : exam.check.value().findings)
        if (finding.text.starts_with(word)) return finding;
    FAIL("no finding on " << word);
    return exam.check->findings.front();
}

} // namespace

TEST_CASE("each exam is held against its practice, condition by condition") {
    Desk desk;
    put_coupon(desk, "T-1", {{"joint", "groove"}, {"thickness", "0.15 in"}});
    put_exam(desk, "T-1", visual(desk, 1, "120 fc"));
    CouponValidity result = exam_validity(desk.office, "T-1");
    REQUIRE(result.exams.size() == 1);
    CHECK(result.coupon == "T-1");
    CHECK(result.all == Truth::yes);
    CHECK(result.exams[0].practice->name == "asme-v-vt");
    CHECK(finding_on(result.exams[0], "light").holds == Truth::yes);

    // 100 fc: ASME V T-952, read.
    put_exam(desk, "T-1", visual(desk, 2, "60 fc"));
    result = exam_validity(desk.office, "T-1");
    CHECK(result.all == Truth::no);
    CHECK(result.exams[0].valid() == Truth::yes);
    CHECK(result.exams[1].valid() == Truth::no);
    CHECK(finding_on(result.exams[1], "light").holds == Truth::no);
}

TEST_CASE("a condition that nobody recorded makes it cannot say") {
    Desk desk;
    put_coupon(desk, "T-1", {{"joint", "groove"}, {"thickness", "0.15 in"}});
    put_exam(desk, "T-1", visual(desk, 1, ""));
    const CouponValidity result = exam_validity(desk.office, "T-1");
    CHECK(result.all == Truth::unknown);
    CHECK(finding_on(result.exams.at(0), "light").lacks == std::vector<std::string>{"light"});
}

TEST_CASE("an exam without a practice is not judged; without the practice's text nothing can be said") {
    Desk desk;
    put_coupon(desk, "T-1", {{"joint", "groove"}});
    CHECK(exam_validity(desk.office, "T-1").exams.empty());
    ExamRecord free = visual(desk, 1, "120 fc");
    free.practice.clear();
    free.practice_hash.clear();
    put_exam(desk, "T-1", free);
    CouponValidity result = exam_validity(desk.office, "T-1");
    CHECK_FALSE(result.exams.at(0).judged());
    CHECK(result.all == Truth::yes);

    ExamRecord foreign = visual(desk, 2, "120 fc");
    foreign.practice = "somebody-elses";
    foreign.practice_hash = std::string(64, 'a');
    put_exam(desk, "T-1", foreign);
    result = exam_validity(desk.office, "T-1");
    CHECK(result.exams.at(1).judged());
    CHECK_FALSE(result.exams[1].practice);
    CHECK(result.exams[1].valid() == Truth::unknown);
    CHECK(result.all == Truth::unknown);
    CHECK_THROWS_AS(exam_validity(desk.office, "T-2"), DataError);
}
