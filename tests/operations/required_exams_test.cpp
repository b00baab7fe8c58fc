#include "catch.hpp"
#include "operations/required_exams.hpp"

#include "case.hpp"
#include "qualify/welds.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

const std::string rules_tail =
    "rules:\n  - {id: r, types: porosity, exams: RT, allowed: none, clause: c, standing: {house: x}}\n";

const std::string exams = R"(required exams:
  - {id: v, one of: VT, clause: c1, standing: {house: x}}
  - {id: m, one of: [MT, PT], clause: c2, standing: {house: x}}
  - {id: r, one of: RT, classes: A, when: joint is groove, clause: c3, standing: {house: x}}
)";

std::shared_ptr<const CriteriaSet> the_set(const std::string &more = "") {
    return set_from(head() + more + exams + rules_tail);
}

/// The choices of each examination: "VT; MT or PT".
std::string choices(const std::vector<AskedExam> &asked) {
    std::string out;
    for (const auto &exam : asked) {
        out += out.empty() ? "" : "; ";
        for (std::size_t i = 0; i < exam.one_of.size(); ++i) out += (i > 0 ? " or " : "") + exam.one_of[i];
    }
    return out;
}

Work work_from(const std::string &jobs, const std::string &rules = "mil-std-1595a") {
    const LoadedWork loaded =
        load_work("rules: " + rules + "\nunits: in\nwork:\n" + jobs, "", shipped_range_rules);
    INFO((loaded.issues.empty() ? "" : loaded.issues.front().text));
    REQUIRE(loaded.work);
    return *loaded.work;
}

std::string sheet_job(const std::string &id, const std::string &more, const std::string &joint = "groove") {
    return "  - {id: " + id + ", joint: " + joint +
           ", form: sheet, process: GTAW, metal group: I, position: F, thickness: 0.063, " + more + "}\n";
}

/// The examinations of the one coupon that does all of the work.
PlannedTest planned(const std::string &jobs, const CriteriaSet *set) {
    const Work work = work_from(jobs);
    const Plan plan = plan_tests(work);
    REQUIRE(plan.coupons.size() == 1);
    return examinations_for(work, plan.coupons[0], set);
}

} // namespace

TEST_CASE("a class asks for its examinations, each with its clause and what of the coupon brings it") {
    const auto set = the_set();
    const auto groove = required_exams(*set, 0, coupon_from("joint=groove magnetic=yes", Unit::inch).facts());
    REQUIRE(choices(groove) == "VT; MT or PT; RT");
    CHECK(groove[0].because.empty());
    CHECK(authority(groove[2].from) == "c3, house");
    CHECK(groove[2].because == std::vector<std::string>{"joint is groove"});
    CHECK(groove[2].lacks.empty());
    const Coupon fillet = coupon_from("joint=fillet magnetic=yes", Unit::inch).facts();
    CHECK(choices(required_exams(*set, 0, fillet)) == "VT; MT or PT");
    CHECK(choices(required_exams(*set, 1, coupon_from("joint=groove", Unit::inch).facts())) ==
          "VT; MT or PT");
}

TEST_CASE("what the coupon does not tell keeps an examination, and is named") {
    const auto asked = required_exams(*the_set(), 0, Coupon{});
    REQUIRE(choices(asked) == "VT; MT or PT; RT");
    CHECK(asked[2].lacks == std::vector<std::string>{"the joint"});
}

TEST_CASE("MT is no choice on metal that is not magnetic, unless it is the only one") {
    // Nothing holds the particles: T.O. 33B-1-1 chapter 3, read.
    const Coupon austenitic = coupon_from("joint=fillet magnetic=no", Unit::inch).facts();
    CHECK(choices(required_exams(*the_set(), 0, austenitic)) == "VT; PT");
    const auto only = set_from(
        head() + "required exams: [{id: m, one of: MT, clause: c, standing: {house: x}}]\n" + rules_tail);
    CHECK(choices(required_exams(*only, 0, austenitic)) == "MT");
}

TEST_CASE("a planned coupon is examined by the strictest class of its jobs") {
    const auto set = the_set();
    const PlannedTest loose = planned(sheet_job("a", "class: B, magnetic: yes"), set.get());
    CHECK(loose.class_id == "B");
    CHECK(choices(loose.exams).find("RT") == std::string::npos);
    const PlannedTest strict = planned(
        sheet_job("a", "class: B, magnetic: yes") + sheet_job("b", "class: A, magnetic: yes"), set.get());
    CHECK(strict.class_id == "A");
    CHECK_THAT(choices(strict.exams), says("RT"));
    CHECK(strict.cautions.empty());
    const auto disordered = the_set("ordered: no\n");
    CHECK(planned(sheet_job("a", "class: A, magnetic: yes"), disordered.get()).cautions ==
          std::vector<ExamCaution>{ExamCaution::classes_not_ordered});
}

TEST_CASE("what a planned coupon's examinations must mind: the metal and the joint") {
    const auto set = the_set();
    const PlannedTest austenitic = planned(sheet_job("a", "class: A, magnetic: no"), set.get());
    CHECK(choices(austenitic.exams).find("MT") == std::string::npos);
    CHECK(austenitic.cautions == std::vector<ExamCaution>{ExamCaution::not_magnetic});
    const PlannedTest mixed = planned(
        sheet_job("a", "class: A, magnetic: yes") + sheet_job("b", "class: A, magnetic: no"), set.get());
    CHECK_THAT(choices(mixed.exams), says("MT or PT"));
    CHECK(mixed.cautions == std::vector<ExamCaution>{ExamCaution::partly_magnetic});
    // Unsaid beside said is not known, whichever was said: both methods stay.
    for (const char *said : {"yes", "no"}) {
        const PlannedTest unsaid =
            planned(sheet_job("a", std::string("class: A, magnetic: ") + said) + sheet_job("b", "class: A"),
                    set.get());
        CHECK_THAT(choices(unsaid.exams), says("MT or PT"));
        CHECK(unsaid.cautions == std::vector<ExamCaution>{ExamCaution::partly_unsaid});
    }
    const PlannedTest fillet = planned(sheet_job("a", "class: A, magnetic: yes", "fillet"), set.get());
    CHECK(choices(fillet.exams).find("RT") == std::string::npos);
    CHECK(fillet.cautions == std::vector<ExamCaution>{ExamCaution::fillet});
}

TEST_CASE("what the drawing calls for beyond the criteria is among the examinations, once") {
    const auto set = the_set();
    const PlannedTest more = planned(sheet_job("a", "class: B, magnetic: yes, also: [RT, VT]") +
                                         sheet_job("b", "class: B, magnetic: yes, also: RT"),
                                     set.get());
    CHECK(choices(more.exams) == "VT; MT or PT; RT");
    CHECK(more.exams[2].called_for);
    CHECK_FALSE(more.exams[0].called_for);
    const LoadedWork wrong = load_work(
        "rules: mil-std-1595a\nunits: in\nwork:\n" + sheet_job("a", "also: XT"), "", shipped_range_rules);
    CHECK_FALSE(wrong.work);
}

TEST_CASE("the rules' own examinations are added where the criteria do not ask for as much") {
    const Work work =
        work_from("  - {id: a, joint: groove, form: plate, process: GTAW, metal group: P1, filler group: F6, "
                  "backing: without, position: F, weld thickness: 0.2, class: A, magnetic: yes}\n",
                  "asme-ix");
    const Plan plan = plan_tests(work);
    const PlannedTest alone = examinations_for(work, plan.coupons.at(0), nullptr);
    CHECK(alone.class_id.empty());
    CHECK(choices(alone.exams) == "VT; RT or mechanical");
    for (const auto &exam : alone.exams) CHECK_FALSE(exam.from.clause.empty());
    // Criteria that ask for VT and RT by themselves leave the rules nothing to add.
    CHECK(choices(examinations_for(work, plan.coupons.at(0), the_set().get()).exams) == "VT; MT or PT; RT");
}
