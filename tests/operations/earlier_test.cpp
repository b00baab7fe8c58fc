// A coupon beside the earlier ones of its kind.
#include "operations/earlier.hpp"

#include "booth.hpp"
#include "catch.hpp"
#include "operations/examining.hpp"
#include "operations/finishing.hpp"
#include "operations/learner.hpp"
#include "operations/logging.hpp"
#include "render/text.hpp"
#include "report/earlier_document.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// Plates of 3/8 in by one welder, for class 2 of MIL-HDBK-1890(AT), Table III (read: page 11): a pore of
/// 0.080 in, an inclusion of 0.080 in, no crack.
class Row : public Desk {
public:
    void coupon(const std::string &mark, const std::string &welded, const std::string &finds,
                const std::map<std::string, std::string> &other = {}, bool examined = true) {
        std::map<std::string, std::string> fields{{"criteria", "mil-hdbk-1890-table-3"},
                                                  {"class", "2"},
                                                  {"joint", "groove"},
                                                  {"form", "plate"},
                                                  {"thickness", "3/8in"},
                                                  {"weld-length", "8in"},
                                                  {"magnetic", "yes"},
                                                  {"material", "steel"},
                                                  {"process", "SMAW"},
                                                  {"welded", welded},
                                                  {"welder", "L1"}};
        for (const auto &[name, value] : other) fields[name] = value;
        std::erase_if(fields, [](const auto &field) { return field.second.empty(); });
        write([&](Writing &w) { register_coupon(w, {mark, fields}); });
        if (!examined) return;
        for (const Exam method : {Exam::VT, Exam::MT, Exam::RT}) {
            const bool logs = method == Exam::RT && !finds.empty();
            write([&](Writing &w) {
                ExamRequest request;
                request.coupon = mark;
                request.method = method;
                request.examiner = "A. Field";
                request.level = "II";
                if (!logs) request.found = 0;
                record_exam(w, request);
            });
            if (!logs) continue;
            write([&](Writing &w) {
                log_lines(w, {mark, 3, finds, "line"});
                finish_exam(w, {mark, 3, {}, true});
            });
        }
    }
    AlikeCoupons of(const std::string &mark) { return earlier_of(office, mark); }
    std::string told(const std::string &mark) {
        Document doc;
        add_earlier(doc, of(mark));
        return text(doc, Paint(false), 1000);
    }
    std::string marks(const std::string &mark) {
        std::string out;
        for (const auto &one : of(mark).coupons) out += (out.empty() ? "" : " ") + one.record.id;
        return out;
    }
};

bool has(const std::string &text, const std::string &part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_CASE("a share of a limit is rounded away from it, and exact at it") {
    const auto share = [](std::int64_t measured, std::int64_t limit, bool kept, bool least) {
        const auto percent = percent_of_limit(measured, limit, kept, least);
        return percent ? static_cast<std::int64_t>(*percent) : -1;
    };
    CHECK(share(80, 80, true, false) == 100);
    CHECK(share(80001, 80000, false, false) == 101);
    CHECK(share(79999, 80000, true, false) == 99);
    CHECK(share(80, 80, true, true) == 100);
    CHECK(share(79999, 80000, false, true) == 99);
    CHECK(share(80001, 80000, true, true) == 101);
    CHECK(share(0, 80, true, false) == 0);
    CHECK(share(5, 0, false, false) == -1);
    CHECK_FALSE(percent_of_limit(Exact(1), Exact(-1), false, false));
}

TEST_CASE(
    "a coupon is held against those of the same welder, criteria, class and joint that came before it") {
    Row row;
    row.coupon("T-1", "2026-11-03", "");
    row.coupon("T-2", "2026-11-02", "gas pore 0.12 at 3");
    row.coupon("T-3", "2026-11-03", "gas pore 0.09 at 3");
    row.coupon("T-4", "2026-11-09", "");
    row.coupon("T-5", "2026-11-01", "", {{"class", "3"}});
    row.coupon("T-6", "2026-11-01", "", {{"joint", "fillet"}, {"leg", "1/4in"}});
    row.coupon("T-7", "2026-11-01", "", {{"welder", "L2"}});
    row.coupon("T-8", "", "");
    // By day, and by their order where the day is the same or not known.
    CHECK(row.marks("T-3") == "T-1 T-2 T-3");
    CHECK(row.marks("T-2") == "T-2");
    CHECK(row.marks("T-1") == "T-2 T-1");
    CHECK(row.marks("T-8") == "T-1 T-2 T-3 T-4 T-8");
    CHECK(row.marks("T-5") == "T-5");
    CHECK(row.marks("T-6") == "T-6");
    CHECK(row.marks("T-7") == "T-7");
    row.write([](Writing &w) { withdraw_coupon(w, "T-2", "the wrong plate"); });
    CHECK(row.marks("T-3") == "T-1 T-3");
    CHECK(has(row.told("T-7"), "It is the first of its kind"));
}

TEST_CASE("a coupon without a welder is held against none") {
    Row row;
    row.coupon("T-1", "2026-11-01", "", {{"welder", ""}});
    row.coupon("T-2", "2026-11-02", "", {{"welder", ""}});
    CHECK(row.marks("T-2") == "T-2");
    CHECK(has(row.told("T-2"), "names no welder"));
}

TEST_CASE("what changed is told by kind and share, and a reject reads as one") {
    Row row;
    row.coupon("T-1", "2026-11-01", "gas pore 0.12 at 3\nslag 0.05 at 5\nslag 0.05 at 6");
    row.coupon("T-2", "2026-11-02", "gas pore 0.0801 at 3");
    row.coupon("T-3", "2026-11-03", "crack 0.2 at 3");
    row.coupon("T-4", "2026-11-04", "gas pore 0.08 at 3");
    const auto second = row.of("T-2");
    REQUIRE(second.coupons.size() == 2);
    REQUIRE(second.coupons[0].worst);
    CHECK(second.coupons[0].worst->percent == 150); // 0.12 of 0.08 in
    CHECK(second.coupons[0].found == decltype(ComparedCoupon::found){{"gas pore", 1}, {"slag inclusion", 2}});
    CHECK(second.coupons[1].worst->percent == 101); // 100.1 %, away from the limit
    CHECK(second.coupons[1].worst->out);
    const std::string told = row.told("T-2");
    CHECK(has(told, "1 earlier coupon of this welder of the same kind"));
    CHECK(has(told, "Since T-1: then reject, now reject."));
    CHECK(has(told, "gas pore: then 1, now 1."));
    CHECK(has(told, "slag inclusion: then 2, now none."));
    CHECK(has(told, "150 % of the limit, out. Now"));
    const std::string crack = row.told("T-3");
    CHECK(has(crack, "2 earlier coupons"));
    CHECK(has(crack, "2 rejected"));
    CHECK(has(crack, "Now Crack in weld or base metal: none is allowed."));
    const auto last = row.of("T-4");
    CHECK(last.coupons.back().verdict == Verdict::accept);
    REQUIRE(last.coupons.back().worst);
    CHECK(last.coupons.back().worst->percent == 100);
    CHECK_FALSE(last.coupons.back().worst->out);
    CHECK(has(row.told("T-4"), "then reject, now accept"));
}

TEST_CASE("what nobody can say is never told as better, nor finds of other exams as fewer") {
    Row row;
    row.coupon("T-1", "2026-11-01", "gas pore 0.12 at 3");
    row.coupon("T-2", "2026-11-02", "", {}, false);
    const std::string told = row.told("T-2");
    CHECK(has(told, "then reject, now cannot say"));
    CHECK(has(told, "The exams that count are not the same (then VT MT RT, now none that counts)"));
    CHECK_FALSE(has(told, "now none."));
    CHECK(has(told, "Now cannot say: something is missing."));
}

TEST_CASE("an accept whose mechanical tests failed says so, and a verdict that moved is told") {
    Row row;
    row.coupon("T-1", "2026-11-01", "", {{"mechanical", "failed"}});
    row.coupon("T-2", "2026-11-02", "");
    row.write([](Writing &w) { judge_and_keep(w, "T-1"); });
    row.write([](Writing &w) {
        reopen_exam(w, "T-1", 3, "one more");
        log_lines(w, {"T-1", 3, "crack 0.2 at 3", "line"});
        finish_exam(w, {"T-1", 3, {}, true});
    });
    const std::string told = row.told("T-2");
    CHECK(has(told, "then reject, but its mechanical tests failed (its record keeps 'accept'), now accept"));
}

TEST_CASE("among the earlier ones an accept with failed mechanical tests is not counted as accepted") {
    Row row;
    row.coupon("T-1", "2026-11-01", "", {{"mechanical", "failed"}});
    row.coupon("T-2", "2026-11-02", "");
    row.coupon("T-3", "2026-11-03", "");
    CHECK(
        has(row.told("T-3"), "1 accepted and 1 accepted by its examinations, with failed mechanical tests."));
    CHECK(has(row.told("T-2"), "then accept, but its mechanical tests failed, now accept"));
}

TEST_CASE("coupons of a kind stand in a row where there are two, and one alone in none") {
    Row row;
    row.coupon("T-1", "2026-11-01", "");
    row.coupon("T-2", "2026-11-02", "gas pore 0.12 at 3");
    row.coupon("T-3", "2026-11-03", "", {{"class", "3"}});
    Selection mine;
    mine.welder = "L1";
    const auto all = alike_of(row.office, mine);
    REQUIRE(all.size() == 1);
    CHECK(all[0].class_id == "2");
    CHECK(all[0].coupons.size() == 2);
    mine.class_id = "3";
    CHECK(alike_of(row.office, mine).empty());
}

TEST_CASE("a learner's coupons stand by the day of the weld, and of the registration where nobody told it") {
    Row row;
    row.coupon("P-1", "2026-11-20", "");
    row.coupon("P-2", "2026-11-10", "");
    row.coupon("P-3", "", "");
    row.coupon("P-4", "2026-11-15", "");
    Selection of;
    of.welder = "L1";
    const Learner learner = learner_of(row.office, of);
    const auto marks = [](const auto &coupons) {
        std::vector<std::string> out;
        for (const auto &one : coupons) out.push_back(one.record.id);
        return out;
    };
    const std::vector<std::string> by_day{"P-2", "P-4", "P-1", "P-3"};
    CHECK(marks(learner.coupons) == by_day);
    REQUIRE(learner.alike.size() == 1);
    CHECK(marks(learner.alike[0].coupons) == by_day);
}
