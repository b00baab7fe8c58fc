#include "operations/streaming.hpp"

#include "booth.hpp"
#include "catch.hpp"
#include "operations/exported.hpp"
#include "operations/people.hpp"
#include "operations/welders.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// A record of nothing, as a stream works with.
struct Empty : Desk {
    Streamed judge(const std::string &line, const StreamRequest &request = {}) {
        return Stream(office, request).judge(line);
    }
};

std::string lines_of(Booth &booth) { return exported(booth.office, {}, {}, true).text; }

} // namespace

TEST_CASE("a stream judges as the record does, and stores nothing", "[stream]") {
    Booth booth;
    booth.coupon("T-1");
    booth.exams("T-1");
    booth.finish(3, "T-1");
    booth.coupon("T-2");
    booth.exams("T-2");
    booth.log("crack 0.1 at 2\ngas pore 0.02 at 5", "T-2");
    booth.finish(3, "T-2");
    booth.coupon("T-3");
    booth.exams("T-3"); // its RT is open
    const std::string text = lines_of(booth);
    Empty empty;
    std::vector<Verdict> verdicts;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) {
        const Streamed one = empty.judge(line);
        INFO(line);
        REQUIRE(one.coupon.judged);
        CHECK(one.fault.empty());
        const Judged of_record = judge_coupon(booth.office, booth.office.coupon(one.coupon.mark));
        CHECK(one.coupon.judged->judgement.classes.size() == of_record.judgement.classes.size());
        for (std::size_t c = 0; c < of_record.judgement.classes.size(); ++c)
            CHECK(one.coupon.judged->judgement.classes[c].verdict == of_record.judgement.classes[c].verdict);
        verdicts.push_back(one.coupon.judged->verdict());
    }
    CHECK(verdicts == std::vector<Verdict>{Verdict::accept, Verdict::reject, Verdict::cannot_say});
    CHECK(empty.book.coupons().empty());
}

TEST_CASE("what an import refuses a stream refuses, and says why in its place", "[stream]") {
    Empty empty;
    const auto fault = [&](const std::string &line) { return empty.judge(line).fault; };
    CHECK_THAT(fault(R"({"id": "X")"), says("not JSON"));
    CHECK_THAT(fault(R"([])"), says("needs an \"id\""));
    CHECK_THAT(fault(R"({"id": "X", "fields": {}, "exams": []} {"id": "Y"})"), says("not JSON"));
    CHECK(fault(R"({"id": "X", "fields": {"thicknes": "1 in"}, "exams": []})") ==
          "a coupon has no field 'thicknes'; did you mean 'thickness'?");
    CHECK_THAT(fault(R"({"id": "X", "fields": {"criteria": "/etc/passwd.yaml"}, "exams": []})"),
               says("is opened only if you say that it may be"));
    CHECK(fault("{\"id\": \"\xff\"}") == "not UTF-8 text");
    const std::string deep(100'000, '[');
    CHECK_FALSE(fault(deep).empty());
    // A key without its s must not lose a crack.
    CHECK_THAT(fault(R"({"id": "X", "fields": {}, "exams": [{"method": "VT", "date": "2026-11-01", )"
                     R"("indication": [{"type": "crack", "length": "1 in"}]}]})"),
               says("unknown key 'indication'"));
}

TEST_CASE("a line that names no criteria is not judged, unless the stream does", "[stream]") {
    Empty empty;
    const std::string line = R"({"id": "X", "fields": {"joint": "groove"}, "exams": []})";
    CHECK_THAT(empty.judge(line).coupon.why_not, says("names no criteria"));
    CHECK(empty.judge(line, {{"iso-5817", "B"}}).coupon.judged->verdict() == Verdict::cannot_say);
}

TEST_CASE("an exam in a stream is held against its practice", "[stream]") {
    Booth booth;
    booth.coupon("T-1");
    booth.exam(Exam::VT, [](ExamRequest &r) {
        Booth::found_none(r);
        r.practice = "aws-b5.2-vt";
        r.sure = true;
    });
    const CouponState kept = booth.office.coupon("T-1");
    const Streamed one = Empty().judge(lines_of(booth));
    REQUIRE(one.coupon.judged);
    CHECK(one.coupon.judged->exam_records.at(0).invalid == kept.exams.at(0).invalid);
    CHECK_FALSE(kept.exams.at(0).invalid.empty());
}

TEST_CASE("what the record says of an examiner goes along with the exam", "[stream]") {
    Booth booth;
    const auto field = [&](const char *certificate, const char *why) {
        PersonRequest person;
        person.name = "A. Field";
        for (const char *method : {"VT", "MT", "RT"})
            person.certificates.push_back(std::string(method) + " II until " + certificate + " number 7");
        person.why = why;
        person.sure = true; // that what was over counts again
        booth.write([&](Writing &w) { write_person(w, person); });
    };
    field("2027-05-01", "");
    booth.coupon("T-1", {{"welder", "L1"}});
    booth.exams("T-1");
    booth.finish(3, "T-1");
    const auto abroad = [&] { return Empty().judge(lines_of(booth)); };
    const Streamed good = abroad();
    CHECK(good.coupon.judged->verdict() == Verdict::accept);
    REQUIRE(good.notes.size() == 1);
    CHECK_THAT(good.notes.at(0), says("no record says here whether A. Field was entitled"));
    field("2026-01-01", "it was over before");
    CHECK(booth.verdict() == Verdict::cannot_say);
    const Streamed over = abroad();
    CHECK(over.coupon.judged->verdict() == Verdict::cannot_say);
    CHECK(over.notes.empty());
    CHECK_THAT(over.coupon.judged->exam_records.at(0).open,
               says("certificate was over on the day of the exam"));
    field("2027-05-01", "renewed after all");
    CHECK(abroad().coupon.judged->verdict() == Verdict::accept);
    booth.write([](Writing &w) { enrol(w, {"L1", "Field, A.", {}, {}, ""}); });
    CHECK(booth.verdict() == Verdict::cannot_say);
    CHECK(abroad().coupon.judged->verdict() == Verdict::cannot_say);
    // Nor does a record where nobody is enrolled, and which vouches for him, make it better.
    Desk other;
    other.write([](Writing &w) {
        PersonRequest person;
        person.name = "A. Field";
        person.certificates = {"VT II", "MT II", "RT II"};
        write_person(w, person);
    });
    other.write([&](Writing &w) {
        return store_import(w,
                            prepare_import(other.office, {{}, lines_of(booth), false, false, false, true}));
    });
    CHECK(judge_coupon(other.office, other.office.coupon("T-1")).verdict() == Verdict::cannot_say);
}

TEST_CASE("lines of an export come back by an import, all or none", "[stream]") {
    Booth booth;
    booth.coupon("T-1");
    booth.exams("T-1");
    booth.log("crack 0.1 at 2", "T-1");
    booth.coupon("T-2");
    const std::string text = lines_of(booth);
    Desk back;
    const auto import = [&](const std::string &lines) {
        back.write([&](Writing &w) {
            return store_import(w, prepare_import(back.office, {{}, lines, false, false, false, true}));
        });
    };
    try {
        import(text + "{\"id\": 3}\n\n{\n");
        FAIL();
    } catch (const Refusal &e) {
        CHECK_THAT(e.what(), says("2 lines cannot be taken, nothing was stored"));
        CHECK_THAT(e.what(), says("\nline 3: "));
        CHECK_THAT(e.what(), says("\nline 5: "));
    }
    CHECK(back.book.coupons().empty());
    import(text);
    CHECK(exported(back.office, {}, {}, true).text == text);
    CHECK(exported(back.office, {}).text == exported(booth.office, {}).text);
}
