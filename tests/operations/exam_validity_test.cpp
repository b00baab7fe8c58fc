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
    out.level = "II";
    out.practice = practice->name;
    out.practice_hash = practice->hash;
    for (const char *one :
         {"distance=20 in", "angle=45 deg", "vision=2026-06-01", "vision test=J1", "certificate=2026-12-31"})
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
    CHECK(exam_validity(desk.office, "T-1").all == Truth::unknown);
    ExamRecord free = visual(desk, 1, "120 fc");
    free.practice.clear();
    free.practice_hash.clear();
    put_exam(desk, "T-1", free);
    CouponValidity result = exam_validity(desk.office, "T-1");
    CHECK_FALSE(result.exams.at(0).judged());
    CHECK(result.all == Truth::unknown);

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

TEST_CASE("a gap of a practice keeps an exam open where it bears on it") {
    Desk desk;
    put_coupon(desk, "T-1", {{"joint", "groove"}, {"magnetic", "yes"}});
    const std::string text = "practice: own\ntitle: t\nedition: e\nmethod: VT\nrules:\n"
                             "  - {id: l, must: light at least 50 fc, clause: c, standing: {house: x}}\n"
                             "gaps:\n"
                             "  - {what: mirrors, when: aids is mirror}\n"
                             "  - {what: books, harmless: nobody reads them}\n";
    const auto practice = load_practice(text).practice;
    REQUIRE(practice);
    const auto check = [&](const std::map<std::string, std::string> &conditions) {
        return check_exam(*practice, conditions, parse_day("2026-11-20"), {});
    };
    CHECK(check({{"light", "60 fc"}, {"aids", "lens"}}).valid == Truth::yes);
    const ExamCheck mirror = check({{"light", "60 fc"}, {"aids", "mirror"}});
    CHECK(mirror.valid == Truth::unknown);
    CHECK(mirror.why_not() == "cannot be called valid: its practice here does not hold: mirrors");
    CHECK(check({{"light", "60 fc"}}).why_not() == "cannot be called valid without aids");
    CHECK(check({{"light", "40 fc"}, {"aids", "mirror"}}).valid == Truth::no);
    // An engine before the fourth did not mind them; what it said is replayed as it was.
    CHECK(check_exam(*practice, {{"light", "60 fc"}, {"aids", "mirror"}}, parse_day("2026-11-20"), {},
                     Gaps::ignored)
              .valid == Truth::yes);
}

TEST_CASE("each shipped practice asks for level, certificate and vision") {
    for (const auto &name : shipped_practice_names()) {
        INFO(name);
        const auto practice = shipped_practice(name);
        for (const char *subject : {"level", "certificate", "vision"}) {
            INFO(subject);
            CHECK(std::any_of(practice->rules.begin(), practice->rules.end(), [&](const PracticeRule &rule) {
                return rule.must.subject == subject && rule.when.empty() && !rule.warning;
            }));
        }
    }
}
