#include "catch.hpp"
#include "operations/finding.hpp"

#include "put.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

Finds::Grade grade(const MethodsFor &one, Exam method) {
    for (const auto &finds : one.methods)
        if (finds.method == method) return finds.grade;
    FAIL();
    return Finds::Grade::no;
}

} // namespace

TEST_CASE("which method finds what on a described coupon") {
    Desk desk;
    // T.O. 33B-1-1 pages 611 and 612, read; a fillet's thickness varies across the image.
    const CouponRecord fillet = described_coupon({{"joint", "fillet"}, {"magnetic", "no"}});
    const auto done = methods_for(desk.catalogue, fillet, {"crack", "gas pore"});
    REQUIRE(done.value.imperfections.size() == 2);
    CHECK_FALSE(done.value.required);
    CHECK(done.value.imperfections[0].imperfection == "crack");
    CHECK(grade(done.value.imperfections[0], Exam::MT) == Finds::Grade::no);
    CHECK(grade(done.value.imperfections[0], Exam::PT) == Finds::Grade::well);
    CHECK(grade(done.value.imperfections[1], Exam::RT) == Finds::Grade::no);
    CHECK(methods_for(desk.catalogue, fillet).value.imperfections.size() == 6);
}

TEST_CASE("an imperfection may be named by any of its words; one that is none is refused") {
    Desk desk;
    const auto &v = Vocabulary::shipped();
    const std::string quick = v[*v.find("crack")].quick;
    CHECK(methods_for(desk.catalogue, {}, {quick}).value.imperfections.at(0).imperfection == "crack");
    try {
        methods_for(desk.catalogue, {}, {"cruck"});
        FAIL();
    } catch (const Refusal &e) {
        CHECK(e.field() == "look-for");
        CHECK_THAT(e.what(), says("did you mean 'crack'?"));
    }
}

TEST_CASE("beside it stands what the coupon's criteria require in its class") {
    Desk desk;
    put_coupon(
        desk, "T-1",
        {{"criteria", "mil-hdbk-1890-table-3"}, {"class", "2"}, {"joint", "groove"}, {"magnetic", "yes"}});
    const auto done = methods_for(desk.catalogue, described_coupon(desk.office, "T-1"));
    CHECK(done.notes.empty());
    REQUIRE(done.value.required);
    CHECK(done.value.required->class_id == "2");
    CHECK(done.value.required->criteria->name == "mil-hdbk-1890-table-3");
    REQUIRE_FALSE(done.value.required->exams.empty());
    for (const auto &exam : done.value.required->exams) CHECK_FALSE(exam.one_of.empty());

    put_coupon(desk, "T-2", {{"joint", "groove"}, {"also", "PT,RT"}});
    const auto called = methods_for(desk.catalogue, described_coupon(desk.office, "T-2")).value.called_for;
    REQUIRE(called.size() == 2);
    CHECK((called[0].called_for && called[1].called_for));
    CHECK(called[0].one_of.size() == 1);

    // Without a class nothing is required yet; a class that the set lacks is doubted.
    const auto asked = [&](const std::map<std::string, std::string> &fields) {
        return methods_for(desk.catalogue, described_coupon(fields));
    };
    CHECK_FALSE(asked({{"criteria", "mil-hdbk-1890-table-3"}}).value.required);
    const auto slip = asked({{"criteria", "mil-hdbk-1890-table-3"}, {"class", "Q"}});
    CHECK_FALSE(slip.value.required);
    REQUIRE(slip.notes.size() == 1);
    CHECK_THAT(slip.notes[0], says("have no class 'Q'; they have 1, 2"));
}
