// What engine 14 asks that those before it did not; what they said is replayed as it was.
#include "catch.hpp"
#include "operations/said_before.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// Stores what engine 13 said of T-1, told `then`, and holds it against what is replayed.
Verdict said_by_thirteenth(Booth &booth, const CouponState &then, const Coupon &facts,
                           const std::string &class_id) {
    const auto set = booth.office.criteria(then.record.get("criteria"));
    const Judgement said = judge(*set, facts, then.exams_done(), then.found(), Vocabulary::shipped(), 13);
    check_replayed(booth, *set, said, 13);
    return said.classes[*set->class_index(class_id)].verdict;
}

} // namespace

TEST_CASE("a verdict of the thirteenth engine is replayed by the unit that it was told") {
    Booth booth;
    booth.coupon("T-1", {{"criteria", "asme-viii-1"},
                         {"class", "full"},
                         {"units", "mm"},
                         {"form", "plate"},
                         {"seam", ""},
                         {"diameter", ""},
                         {"thickness", "0.5in"},
                         {"weld-thickness", "full"},
                         {"weld-width", "0.5in"},
                         {"weld-length", "12in"},
                         {"process", "SMAW"}});
    booth.exam(Exam::RT, Booth::found_none);
    booth.exam(Exam::PT);
    booth.log("rounded indication 0.193in at 3in", "T-1", 2);
    booth.finish(2);
    CHECK(booth.verdict() == Verdict::reject); // 3/16 in or 5 mm
    const CouponState then = booth.office.coupon("T-1");
    Coupon facts = then.record.facts();
    CHECK(facts.values.measured_in() == Unit::inch);
    facts.values.measure_in(Unit::millimetre);
    CHECK(said_by_thirteenth(booth, then, facts, "full") == Verdict::accept);
}

TEST_CASE("a verdict of the thirteenth engine is replayed by one exposure through both walls") {
    Booth booth;
    booth.coupon("T-1", {{"weld-length", ""}});
    for (const Exam method : {Exam::VT, Exam::MT}) booth.exam(method, Booth::found_none);
    booth.exam(Exam::RT, [](ExamRequest &r) {
        r.found = 0;
        r.conditions = {"view=ellipse", "exposures=1"};
    });
    CHECK(booth.verdict() == Verdict::accept); // along the tube, that may be all of the weld
    booth.write([](Writing &w) { return change_coupon(w, {{"T-1", {{"seam", "girth"}}}, {}, "so it is"}); });
    CHECK(booth.verdict() == Verdict::cannot_say);
    CouponState then = booth.office.coupon("T-1");
    for (auto &exam : then.exams) {
        if (exam.method == Exam::RT) CHECK_THAT(exam.open, says("does not show all of a girth weld"));
        exam.open.clear();
    }
    CHECK(said_by_thirteenth(booth, then, then.record.facts(), "2") == Verdict::accept);
}
