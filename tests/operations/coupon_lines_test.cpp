#include "operations/coupon_lines.hpp"

#include "booth.hpp"
#include "catch.hpp"
#include "operations/keeping.hpp"
#include "operations/looking.hpp"
#include "operations/owners_copy.hpp"
#include "operations/people.hpp"
#include "operations/selecting.hpp"
#include "operations/summarizing.hpp"
#include "records/codecs/line.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// Behind the program.
void tamper(const Booth &booth, const std::string &sql) {
    SQLite::Database(booth.path(), SQLite::OPEN_READWRITE).exec(sql);
}

bool kept(Booth &booth, const std::string &mark = "T-1") {
    return KeptLines(booth.office).read(*booth.office.ledger().line(mark)).has_value();
}

std::optional<Verdict> listed_verdict(Booth &booth) { return list_coupons(booth.office).at(0).verdict; }

void accepted_coupon(Booth &booth) {
    booth.coupon("T-1", {{"welder", "L1"}, {"cohort", "autumn"}});
    booth.exams();
    booth.finish();
}

} // namespace

TEST_CASE("what was entered is in lists at once, and taken back by the next entry", "[lines]") {
    Booth booth;
    accepted_coupon(booth);
    CHECK(kept(booth));
    CHECK(listed_verdict(booth) == Verdict::accept);
    {
        Writing writing(booth.office, "tester");
        reopen_exam(writing, "T-1", 3, "one was missed");
        CHECK_FALSE(kept(booth)); // within the transaction
        CHECK(listed_verdict(booth) == Verdict::cannot_say);
    }
    CHECK(kept(booth)); // nothing was committed
    booth.write([](Writing &w) { reopen_exam(w, "T-1", 3, "one was missed"); });
    booth.log("crack 0.1 at 2", "T-1", 3);
    booth.finish();
    CHECK(kept(booth));
    CHECK(listed_verdict(booth) == Verdict::reject);
    CHECK(false_lines(booth.office).empty());
}

TEST_CASE("a line says that a reject was made to go, by an entry about its finds or its description",
          "[lines]") {
    Booth booth;
    accepted_coupon(booth);
    CHECK_FALSE(list_coupons(booth.office).at(0).cautions);
    booth.finds("crack 0.1 at 2");
    CHECK_FALSE(list_coupons(booth.office).at(0).cautions); // it stands
    booth.write([](Writing &w) { return correct_indication(w, "T-1", 1, "pore 0.01 at 2", "looked again"); });
    CHECK(kept(booth));
    CHECK(listed_verdict(booth) == Verdict::accept);
    CHECK(list_coupons(booth.office).at(0).cautions);
    CHECK(false_lines(booth.office).empty());
    // What was typed wrong while nobody had seen it, and rejected nothing, is no caution.
    booth.coupon("T-2");
    booth.exams("T-2");
    booth.log("pore 0.01 at 2", "T-2", 3);
    booth.write([](Writing &w) { return correct_indication(w, "T-2", 1, "pore 0.02 at 2", "a slip"); });
    booth.finish(3, "T-2");
    CHECK_FALSE(list_coupons(booth.office).at(1).cautions);
}

TEST_CASE("what commits without keeping lines leaves none that is older", "[lines]") {
    Booth booth;
    accepted_coupon(booth);
    Writing writing(booth.office, "tester");
    reopen_exam(writing, "T-1", 3, "one was missed");
    writing.commit();
    CHECK_FALSE(kept(booth));
    CHECK(listed_verdict(booth) == Verdict::cannot_say);
    CHECK(refresh_lines(booth.office).coupons == 1);
    CHECK(kept(booth));
}

TEST_CASE("a kept line says all that a fresh one says", "[lines]") {
    Booth booth;
    accepted_coupon(booth);
    booth.write([](Writing &w) { reopen_exam(w, "T-1", 3, "more"); });
    booth.log("crack 0.1 at 2\ngas pore 0.02 at 5", "T-1", 3);
    booth.finish();
    booth.write([](Writing &w) { grade_coupon(w, {"T-1", true, "in spite of it", {}}); });
    booth.coupon("T-2", {{"criteria", ""}, {"class", ""}, {"thickness", "3.2mm"}});
    for (const char *mark : {"T-1", "T-2"}) {
        INFO(mark);
        const CouponState state = booth.office.coupon(mark);
        const CouponLine fresh =
            line_of(state, judge_or_tell(booth.office, state), standing_of_grade(booth.office, state));
        const auto line = KeptLines(booth.office).read(*booth.office.ledger().line(mark));
        REQUIRE(line);
        CHECK(line->record == fresh.record);
        CHECK(line->exams == fresh.exams);
        CHECK(line->unfinished == fresh.unfinished);
        CHECK(line->indications == fresh.indications);
        CHECK(line->verdict == fresh.verdict);
        CHECK(line->why_not == fresh.why_not);
        CHECK(line->finds == fresh.finds);
        CHECK(line->rejected_by == fresh.rejected_by);
        CHECK(line->grade.has_value() == fresh.grade.has_value());
        CHECK(line->grade_standing.now == fresh.grade_standing.now);
        CHECK(codec::body_of(*line) == codec::body_of(fresh));
    }
    const auto first = list_coupons(booth.office).at(0);
    CHECK(first.rejected_by.size() == 1);
    REQUIRE(first.finds.size() == 2);
    CHECK(first.finds[0].rejects);
    CHECK_FALSE(first.finds[1].rejects);
    CHECK(first.grade->remark == "in spite of it");
}

TEST_CASE("a size that rejects nothing and a cap within its limit are no imperfections", "[lines]") {
    Booth booth;
    const auto held = [&](const std::string &mark, const std::string &found) {
        booth.coupon(mark, {{"criteria", "cfr-46-56.70-15"},
                            {"class", ""},
                            {"temperature", "800 F"},
                            {"joint-form", "butt"}});
        booth.exam(Exam::VT, {}, mark);
        booth.log(found, mark, 1);
        booth.finish(1, mark);
        std::string out;
        const auto all = list_coupons(booth.office);
        for (const auto &find : all.back().finds)
            out += find.held ? 'h' : find.unjudged ? 'u' : find.rejects ? 'r' : '-';
        return out;
    };
    // No rule of this set judges a fillet's size.
    CHECK(held("T-1", "fillet size 0.2\nexcess weld metal h 0.05 face at 2\npore 0.01 at 3") == "uh-");
    CHECK(held("T-2", "excess weld metal h 0.13 face at 2\nexcess weld metal face at 4\n"
                      "excess weld metal h 0.05 face at 6") == "r-h");
}

TEST_CASE("a coupon without a class is counted by the class that it is told by", "[lines]") {
    Booth booth;
    booth.coupon("T-1", {{"class", ""}});
    booth.exams();
    booth.log("crack 0.1 at 2\ncrack 0.1 at 5", "T-1", 3);
    booth.finish();
    const CouponLine any = list_coupons(booth.office).at(0);
    booth.write([](Writing &w) { change_coupon(w, {{"T-1", {{"class", "3"}}}, {}, "it is for class 3"}); });
    const CouponLine of_the_loosest = list_coupons(booth.office).at(0);
    CHECK(any.verdict == Verdict::reject);
    CHECK(any.rejected_by == of_the_loosest.rejected_by);
    CHECK(any.rejected_by.size() == 2); // each crack is a reason
}

TEST_CASE("a criteria file of one's own that was edited makes lists judge afresh", "[lines]") {
    Booth booth;
    const std::string strict = booth.file("own.yaml");
    const auto set = [&](const std::string &edition) {
        write_file(
            strict,
            "set: own\ntitle: t\nedition: " + edition +
                "\nunits: in\nclasses: [A]\nrules:\n  - id: r\n    types: [gas pore]\n"
                "    exams: [VT]\n    allowed: {A: none}\n    clause: '1'\n    standing: {house: x}\n");
    };
    set("one");
    accepted_coupon(booth);
    booth.write([&](Writing &w) {
        change_coupon(w, {{"T-1", {{"criteria", strict}, {"class", "A"}}}, {}, "own"});
    });
    CHECK(kept(booth));
    set("two");
    Catalogue catalogue(booth.outside);
    Office later(booth.book, catalogue);
    CHECK_FALSE(KeptLines(later).read(*later.ledger().line("T-1")));
    std::filesystem::remove(strict);
    Catalogue none(booth.outside);
    Office without(booth.book, none);
    CHECK_FALSE(KeptLines(without).read(*without.ledger().line("T-1")));
    CHECK(list_coupons(without).at(0).why_not.find("own.yaml") != std::string::npos);
}

TEST_CASE("a line that was changed behind the program is not read, and verify names it", "[lines]") {
    const char *const tamperings[] = {
        "UPDATE coupon_line SET body = replace(body, '1:2', '1:0')",
        "UPDATE coupon_line SET cohort = 'spring'",
        "UPDATE coupon_line SET basis = basis || ' '",
    };
    for (const char *sql : tamperings) {
        INFO(sql);
        Booth booth;
        accepted_coupon(booth);
        booth.write([](Writing &w) { reopen_exam(w, "T-1", 3, "more"); });
        booth.log("crack 0.1 at 2", "T-1", 3);
        booth.finish();
        tamper(booth, sql);
        CHECK(listed_verdict(booth) == Verdict::reject);
        const Verified verified = verify(booth.office, {});
        CHECK(verified.false_lines == std::vector<std::string>{"T-1"});
        CHECK_FALSE(verified.holds());
        CHECK(refresh_lines(booth.office).were_false == std::vector<std::string>{"T-1"});
        CHECK(refresh_lines(booth.office).were_false.empty());
        CHECK(verify(booth.office, {}).holds());
    }
}

TEST_CASE("a coupon that lists would leave out is missed by verify", "[lines]") {
    for (const char *sql : {"DELETE FROM coupon_line WHERE coupon = 'T-1'",
                            "UPDATE coupon_line SET first = 1000 WHERE coupon = 'T-1'",
                            "INSERT INTO coupon_line (first, coupon) VALUES (999, 'T-9')"}) {
        INFO(sql);
        Booth booth;
        accepted_coupon(booth);
        tamper(booth, sql);
        CHECK_FALSE(verify(booth.office, {}).chain.faults.empty());
    }
}

TEST_CASE("no list is shown of a record whose table lacks a coupon, or has one too many", "[lines]") {
    for (const char *sql : {"DELETE FROM coupon_line WHERE coupon = 'T-1'",
                            "INSERT INTO coupon_line (first, coupon) VALUES (999, 'T-9')"}) {
        INFO(sql);
        Booth booth;
        accepted_coupon(booth);
        CHECK(list_coupons(booth.office).size() == 1);
        tamper(booth, sql);
        CHECK_THROWS_AS(list_coupons(booth.office), StoreError);
        CHECK_THROWS_AS(booth.book.coupons(), StoreError);
    }
}

TEST_CASE("a record that was put in the place of another is counted anew", "[lines]") {
    Booth booth;
    accepted_coupon(booth);
    CHECK(booth.book.coupons().size() == 1);
    Booth other;
    accepted_coupon(other);
    other.coupon("T-2");
    tamper(other, "DELETE FROM coupon_line WHERE coupon = 'T-2'"); // as many lines as the first one had
    std::filesystem::rename(other.path(), booth.path());
    Book there(booth.path(), Ledger::Mode::read);
    CHECK_THROWS_AS(there.coupons(), StoreError);
}

TEST_CASE("a person whose certificate is said to have ended takes the lines back that rest on it",
          "[lines]") {
    Booth booth;
    PersonRequest person;
    person.name = "A. Field";
    person.certificates = {"VT II number 1", "MT II number 2", "RT II until 2026-12-31 number 3"};
    booth.write([&](Writing &w) { write_person(w, person); });
    accepted_coupon(booth);
    booth.write([](Writing &w) { judge_and_keep(w, "T-1", {}); });
    CHECK(listed_verdict(booth) == Verdict::accept);
    CHECK(verify(booth.office, {true, ""}).holds());
    PersonRequest ended;
    ended.name = "A. Field";
    ended.certificates = {"MT II until 2020-01-01 number 2"};
    ended.why = "the letter came late";
    booth.write([&](Writing &w) { write_person(w, ended); });
    CHECK(kept(booth));
    CHECK(listed_verdict(booth) == Verdict::cannot_say);
    // What was said before stays as it was said.
    CHECK(verify(booth.office, {true, ""}).holds());
    booth.write([](Writing &w) { judge_and_keep(w, "T-1", {}); });
    CHECK(verify(booth.office, {true, ""}).holds());
    // One that was renewed under its number takes nothing from exams of before; one that had no end, and is
    // said to begin later, does.
    ended.certificates = {"RT II since 2027-01-01 until 2031-12-31 number 3", "MT II number 2"};
    ended.sure = true; // that the MT counts again
    booth.write([&](Writing &w) { write_person(w, ended); });
    CHECK(listed_verdict(booth) == Verdict::accept);
    ended.certificates = {"VT II since 2027-01-01 number 1"};
    booth.write([&](Writing &w) { write_person(w, ended); });
    CHECK(listed_verdict(booth) == Verdict::cannot_say);
    CHECK(verify(booth.office, {true, ""}).holds());
}

TEST_CASE("what the shop confirms of its own copy makes lists judge afresh", "[lines]") {
    Booth booth;
    accepted_coupon(booth);
    CHECK(kept(booth));
    Ledger::Transaction together(booth.office.ledger());
    Entry e;
    e.kind = "confirmation";
    e.subject = "mil-hdbk-1890-table-3";
    e.body = "{}";
    e.at = "2026-11-25T10:00:00Z";
    e.who = "tester";
    booth.office.ledger().append(e);
    CHECK_FALSE(kept(booth));
}

TEST_CASE("many coupons that were written about at once all have their lines", "[lines]") {
    Booth booth;
    booth.write([](Writing &w) {
        for (int n = 1; n <= 1200; ++n)
            register_coupon(w, {"T-" + std::to_string(n), {{"cohort", n % 2 == 0 ? "even" : "odd"}}});
    });
    CHECK(kept(booth, "T-1"));
    CHECK(kept(booth, "T-1200"));
    CHECK_FALSE(KeptLines(booth.office).miss_any());
    tamper(booth, "UPDATE coupon_line SET basis = 'older' || basis WHERE first <= 700");
    CHECK(KeptLines(booth.office).miss_any());
    CHECK(KeptLines(booth.office).miss_many());
    CHECK(list_coupons(booth.office, {"", "even"}).size() == 600);
    const Newest two = newest(booth.office, {"", "odd"}, 2);
    REQUIRE(two.coupons.size() == 2);
    CHECK(two.more);
    CHECK(two.coupons[0].coupon.record.id == "T-1197"); // oldest first
    CHECK(two.coupons[1].coupon.record.id == "T-1199");
    CHECK_FALSE(newest(booth.office, {"", "odd"}, 600).more);
}

TEST_CASE("lines of a cohort come some at a time, from either end, with those that nobody knows of",
          "[lines]") {
    Booth booth;
    const auto put = [&](const std::string &mark, const std::string &cohort, const std::string &class_id) {
        booth.coupon(mark, {{"cohort", cohort}, {"class", class_id}});
    };
    put("A-1", "autumn", "2");
    put("S-1", "spring", "2");
    put("A-2", "autumn", "1");
    put("S-2", "spring", "1");
    put("A-3", "autumn", "2");
    put("S-3", "spring", "2");
    put("A-4", "autumn", "2");
    tamper(booth, "UPDATE coupon_line SET body = NULL WHERE coupon = 'S-2'"); // to be worked out
    const auto marks = [&](bool backwards, const std::string &cohort, const std::string &class_id) {
        Ledger::LinesAsked asked{backwards ? std::numeric_limits<std::int64_t>::max() : 0, backwards, 2,
                                 cohort, class_id};
        std::string out;
        for (auto some = booth.office.ledger().lines(asked); !some.empty();
             some = booth.office.ledger().lines(asked)) {
            CHECK(some.size() <= 2);
            for (const auto &line : some) out += line.coupon + " ";
            asked.from = some.back().first;
        }
        return out;
    };
    CHECK(marks(false, "autumn", "") == "A-1 A-2 S-2 A-3 A-4 ");
    CHECK(marks(true, "autumn", "") == "A-4 A-3 S-2 A-2 A-1 ");
    CHECK(marks(false, "autumn", "2") == "A-1 S-2 A-3 A-4 ");
    CHECK(marks(false, "", "1") == "A-2 S-2 ");
    CHECK(marks(false, "", "") == "A-1 S-1 A-2 S-2 A-3 S-3 A-4 ");
    CHECK(marks(false, "winter", "") == "S-2 ");
}
