#include "catch.hpp"
#include "operations/ranging.hpp"
#include "render/text.hpp"
#include "report/range_document.hpp"

#include "put.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

const VariableRange &of(const RangedTest &test, Trait trait) {
    for (const auto &one : test.range)
        if (one.variable->of == trait) return one;
    FAIL("no such variable");
    return test.range.front();
}

template <class F>
std::string field_of_refusal(F f) {
    try {
        f();
    } catch (const Refusal &e) {
        return e.field();
    }
    return "none refused";
}

} // namespace

TEST_CASE("a described coupon takes bare numbers in its own units, whatever order they are given in") {
    const CouponRecord coupon = described_coupon({{"units", "mm"}, {"thickness", "3"}, {"diameter", "60"}});
    CHECK(coupon.fields.at("thickness").value == Exact(3'000'000));
    CHECK(coupon.id.empty());
    CHECK(field_of_refusal([] { described_coupon({{"thickness", "thick"}}); }) == "thickness");
    CHECK_THROWS_WITH(described_coupon({{"thicknes", "3"}}), says("did you mean 'thickness'?"));
}

TEST_CASE("a coupon on record may be described otherwise in part") {
    Desk desk;
    put_coupon(desk, "T-7", {{"joint", "groove"}, {"process", "GTAW"}, {"thickness", "0.05 in"}});
    CHECK(described_coupon(desk.office, "T-7").get("joint") == "groove");
    const CouponRecord other = described_coupon(desk.office, "T-7", {{"joint", "fillet"}});
    CHECK(other.id == "T-7");
    CHECK(other.get("joint") == "fillet");
    CHECK(other.get("process") == "GTAW");
    CHECK(described_coupon(desk.office, "T-7").get("joint") == "groove"); // nothing was stored
    CHECK_THROWS_AS(described_coupon(desk.office, "T-8"), DataError);
}

TEST_CASE("what a test would qualify, by rules that must be named") {
    Desk desk;
    const CouponRecord tube = described_coupon({{"joint", "groove"},
                                                {"form", "tube"},
                                                {"process", "GTAW"},
                                                {"position", "6G"},
                                                {"thickness", "0.045in"},
                                                {"metal-group", "IIa"}});
    const RangeResult result = range_of_coupon(desk.catalogue, "aws-d17.1", tube);
    REQUIRE(result.tests.size() == 1);
    // 0.67 T to 4 T: AWS D17.1, as a page on it says (criteria/welder/aws-d17.1.yaml).
    const auto &edges = of(result.tests[0], Trait::thickness).parts.at(0).edges;
    REQUIRE(edges.size() == 2);
    CHECK(edges[0].second == Exact(762'000)); // rounded to 0.001 in, by common practice
    CHECK(of(result.tests[0], Trait::thickness).parts.at(0).computed.at(0) == Exact(765'810));
    CHECK(edges[1].second == Exact(4'572'000));
    CHECK(field_of_refusal([&] { range_of_coupon(desk.catalogue, "", tube); }) == "rules");
    CHECK_THROWS_WITH(range_of_coupon(desk.catalogue, "", tube), says("asme-ix, aws-d1.1"));
    CHECK(field_of_refusal([&] { range_of_coupon(desk.catalogue, "aws-d17.1", {}); }) == "coupon");
}

TEST_CASE("a word that the rules do not know is refused at its field") {
    Desk desk;
    const CouponRecord slip = described_coupon({{"position", "6g"}});
    CHECK_THROWS_WITH(range_of_coupon(desk.catalogue, "aws-d17.1", slip), says("did you mean '6G'?"));
    CHECK(field_of_refusal([&] { range_of_coupon(desk.catalogue, "aws-d17.1", slip); }) == "position");
}

TEST_CASE("a butt that is said to be welded through is as thick as its thinner member") {
    const CouponRecord told = described_coupon({{"joint", "groove"},
                                                {"joint-form", "butt"},
                                                {"thickness", "0.2 in"},
                                                {"thickness-2", "0.3 in"},
                                                {"weld-thickness", "full"}});
    CHECK(told.get("weld-thickness") == "0.2 in");
    CHECK(field_of_refusal([&] {
              described_coupon({{"joint", "groove"}, {"weld-thickness", "full"}});
          }) == "weld-thickness");
}

TEST_CASE("a word that no range of such a test goes by need not be known") {
    Desk desk;
    // AWS D1.1 groups electrodes of SMAW alone; F6 of GTAW is the trade's own number.
    const auto test = [](const char *process) {
        return described_coupon(
            {{"process", process}, {"joint", "groove"}, {"form", "plate"}, {"filler-group", "F6"}});
    };
    CHECK(range_of_coupon(desk.catalogue, "aws-d1.1", test("GTAW")).tests.size() == 1);
    CHECK(field_of_refusal([&] { range_of_coupon(desk.catalogue, "aws-d1.1", test("SMAW")); }) ==
          "filler-group");
    CHECK(field_of_refusal([&] {
              range_of_coupon(desk.catalogue, "asme-ix",
                              described_coupon({{"process", "GTAW"}, {"filler-group", "F99"}}));
          }) == "filler-group");
}

TEST_CASE("a coupon of two processes is a test of each") {
    Desk desk;
    const auto result = range_of_coupon(
        desk.catalogue, "aws-d1.1",
        described_coupon({{"process", "GTAW 1/8in + SMAW 3/8in"}, {"joint", "groove"}, {"form", "plate"}}));
    REQUIRE(result.tests.size() == 2);
    CHECK(result.tests[0].test.word(Trait::process) == "GTAW");
    CHECK(*result.tests[1].test.size(Trait::weld_thickness) == Exact(9'525'000));
}

TEST_CASE("a trait that the rules name and that was not read is told where the test could bear on it") {
    Desk desk;
    constexpr const char *what = "else not known: whether and how the diameter of a tube limits";
    const auto told = [&](const std::string &rules, std::map<std::string, std::string> fields) {
        fields.emplace("joint", "groove");
        return text(document_of(range_of_coupon(desk.catalogue, rules, described_coupon(fields))),
                    Paint(false), 1000);
    };
    for (const std::string rules : {"aws-d17.1", "mil-std-1595a"}) {
        CHECK_THAT(told(rules, {{"form", "tube"}, {"diameter", "2 in"}}), says(what));
        CHECK_THAT(told(rules, {{"form", "tube"}, {"diameter", "2 in"}}), says("- 2 in\n"));
        CHECK_THAT(told(rules, {{"form", "sheet"}}), !says(what));
    }
    CHECK_THAT(told("asme-ix", {{"form", "tube"}, {"diameter", "2 in"}}), !says(what));
}
