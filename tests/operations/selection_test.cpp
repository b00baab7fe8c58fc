#include "operations/selecting.hpp"

#include "booth.hpp"
#include "catch.hpp"
#include "operations/exported.hpp"
#include "operations/looking.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::string marks(Booth &booth, const Selection &of) {
    std::string out;
    select(booth.office, of,
           [&](CouponAtHand &one) { out += (out.empty() ? "" : " ") + one.coupon().record.id; });
    return out;
}

/// A cohort with everything that lists are asked for.
class Cohort : public Booth {
public:
    Cohort() {
        coupon("accepted", {{"welder", "L1"}, {"cohort", "autumn"}, {"welded", "2026-11-02"}});
        exams("accepted");
        finish(3, "accepted");
        coupon("rejected", {{"welder", "L2"}, {"cohort", "autumn"}, {"welded", "2026-11-03"}});
        exams("rejected");
        finds("crack l 0.2 at 2", "rejected");
        coupon("open",
               {{"welder", "L1"}, {"cohort", "spring"}, {"class", "1"}, {"process", "GTAW 1/16in + SMAW"}});
        exams("open");
        coupon("bare", {{"welder", "L2"}, {"criteria", ""}, {"class", ""}, {"process", ""}});
        coupon("gone", {{"cohort", "autumn"}, {"welded", "2026-11-02"}});
        write([](Writing &w) { return withdraw_coupon(w, "gone", "the wrong plate"); });
    }
};

Selection with(const std::function<void(Selection &)> &change) {
    Selection out;
    change(out);
    return out;
}

} // namespace

TEST_CASE("a selection holds of a coupon what was asked for, and what it does not say it is not found by") {
    Cohort booth;
    struct Row {
        std::string name;
        std::function<void(Selection &)> asked;
        std::string expected;
    };
    const std::vector<Row> rows{
        {"all", [](Selection &) {}, "accepted rejected open bare gone"},
        {"cohort", [](Selection &s) { s.cohort = "autumn"; }, "accepted rejected gone"},
        {"part of a cohort", [](Selection &s) { s.cohort = "aut"; }, ""},
        {"welder", [](Selection &s) { s.welder = "L1"; }, "accepted open"},
        {"class", [](Selection &s) { s.class_id = "1"; }, "open"},
        {"criteria", [](Selection &s) { s.criteria = "mil-hdbk-1890-table-3"; },
         "accepted rejected open gone"},
        {"other criteria", [](Selection &s) { s.criteria = "iso-5817"; }, ""},
        {"process", [](Selection &s) { s.process = "SMAW"; }, "open"},
        {"process by another name", [](Selection &s) { s.process = "tig"; }, "accepted rejected open gone"},
        {"a process of both", [](Selection &s) { s.process = "SMAW + TIG"; }, "open"},
        {"unknown process", [](Selection &s) { s.process = "knitting"; }, ""},
        {"from", [](Selection &s) { s.from = parse_day("2026-11-03"); }, "rejected"},
        {"to", [](Selection &s) { s.to = parse_day("2026-11-02"); }, "accepted gone"},
        {"one day", [](Selection &s) { s.from = s.to = parse_day("2026-11-03"); }, "rejected"},
        {"method", [](Selection &s) { s.method = Exam::RT; }, "accepted rejected open"},
        {"method of none", [](Selection &s) { s.method = Exam::PT; }, ""},
        {"accept", [](Selection &s) { s.verdict = Verdict::accept; }, "accepted"},
        {"reject", [](Selection &s) { s.verdict = Verdict::reject; }, "rejected"},
        // Neither one without criteria, nor one that is withdrawn.
        {"cannot say", [](Selection &s) { s.verdict = Verdict::cannot_say; }, "open"},
        {"no grade", [](Selection &s) { s.grade = GradeState::none; }, "accepted rejected open bare gone"},
        {"unfinished", [](Selection &s) { s.unfinished = true; }, "open bare"},
        {"two",
         [](Selection &s) {
             s.cohort = "autumn";
             s.verdict = Verdict::reject;
         },
         "rejected"},
    };
    for (const auto &row : rows) {
        INFO(row.name);
        CHECK(marks(booth, with(row.asked)) == row.expected);
    }
    CHECK_THAT(booth
                   .refusal([&] {
                       marks(booth, with([](Selection &s) {
                                 s.from = parse_day("2026-11-03");
                                 s.to = parse_day("2026-11-02");
                             }));
                   })
                   .what(),
               says("from 2026-11-03 to 2026-11-02 there is no day"));
}

TEST_CASE("an exam that lost a find since it was finished is unfinished") {
    Cohort booth;
    const auto unfinished = [&] { return marks(booth, with([](Selection &s) { s.unfinished = true; })); };
    CHECK(unfinished() == "open bare");
    booth.write([](Writing &w) { return withdraw_indication(w, "rejected", 1, "a scratch of the brush"); });
    CHECK(unfinished() == "rejected open bare");
}

TEST_CASE("every coupon has one grade state, and a grade that holds no more is neither passed nor failed") {
    Cohort booth;
    booth.write([](Writing &w) { return grade_coupon(w, {"accepted", true, "", {}}); });
    booth.write([](Writing &w) { return grade_coupon(w, {"rejected", false, "", {}}); });
    const auto state = [&](GradeState grade) {
        return marks(booth, with([&](Selection &s) { s.grade = grade; }));
    };
    CHECK(state(GradeState::passed) == "accepted");
    CHECK(state(GradeState::failed) == "rejected");
    CHECK(state(GradeState::none) == "open bare gone");
    CHECK(state(GradeState::again).empty());
    booth.finds("crack l 0.2 at 2", "accepted");
    CHECK(state(GradeState::passed).empty());
    CHECK(state(GradeState::again) == "accepted");
}

TEST_CASE(
    "a welder who is named no more is not found by the old name, and the order stays that of registration") {
    Booth booth;
    for (const char *mark : {"T-1", "T-2", "T-3"}) booth.coupon(mark, {{"welder", "L1"}});
    const auto renamed = [&](const std::string &mark, const std::string &welder) {
        booth.write([&](Writing &w) {
            return change_coupon(w, {{mark, {{"welder", welder}}}, {}, "misread"});
        });
    };
    renamed("T-1", "L2");
    renamed("T-1", "L1");
    renamed("T-2", "L2");
    CHECK(marks(booth, with([](Selection &s) { s.welder = "L1"; })) == "T-1 T-3");
    CHECK(marks(booth, with([](Selection &s) { s.welder = "L2"; })) == "T-2");
}

TEST_CASE("a coupon is judged once however often it is looked at, and only if it is") {
    Cohort booth;
    select(booth.office, {}, [&](CouponAtHand &one) {
        const JudgedOrNot *first = &one.judged();
        CHECK(&one.judged() == first);
        CHECK(first->judged.has_value() == (one.coupon().record.id != "bare"));
    });
}

TEST_CASE("lists, judging all and exports take a selection") {
    Cohort booth;
    const Selection autumn = with([](Selection &s) { s.cohort = "autumn"; });
    CHECK(list_coupons(booth.office, autumn).size() == 3);
    std::string judged;
    const auto take = [&](const JudgedOrNot &one) { judged += one.mark + " "; };
    judge_all(booth.office, {}, take, autumn);
    CHECK(judged == "accepted rejected gone ");
    judged.clear();
    judge_and_keep_all(booth.office, {"", "3"}, take, autumn, [&](const auto &some) { booth.write(some); });
    CHECK(judged == "accepted rejected gone ");
    CHECK(booth.office.coupon("accepted").verdicts.size() == 1);
    CHECK(booth.office.coupon("gone").verdicts.empty());
    CHECK(booth.office.coupon("open").verdicts.empty());
    CHECK(exported(booth.office, {}, autumn).coupons == 2); // none that is withdrawn
    CHECK_THAT(exported(booth.office, Sheet::coupons, autumn).text, says("rejected,"));
    CHECK(exported(booth.office, Sheet::coupons, autumn).text.find("open,") == std::string::npos);
}
