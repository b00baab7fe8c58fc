#include "operations/rejudging.hpp"

#include "booth.hpp"
#include "catch.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// A coupon for class C of ISO 5817:2014, root 4 mm wide, with that much of excess penetration.
void penetrated(Booth &booth, const std::string &mark, const std::string &height) {
    booth.coupon(mark, {{"criteria", "iso-5817"},
                        {"class", "C"},
                        {"form", "plate"},
                        {"diameter", ""},
                        {"thickness", "10mm"},
                        {"weld-thickness", "10mm"},
                        {"weld-length", "200mm"},
                        {"sides", "one"}});
    booth.exam(Exam::VT, {}, mark);
    booth.log("excess penetration h " + height + "mm w 4mm at 50mm", mark);
    booth.finish(1, mark);
}

} // namespace

TEST_CASE("verdicts by another edition beside the coupons' own: what differs, and by which rules") {
    Booth booth;
    // Row 1.11, level C over 3 mm: 1 + 0.6 b in 2014 (a read extract), 1 + 0.45 b in 2023 (two lists by
    // others): 3.4 mm and 2.8 mm at b = 4 mm.
    penetrated(booth, "T-1", "2.8");
    penetrated(booth, "T-2", "2.9");
    penetrated(booth, "T-3", "3.5");
    booth.put("T-4");
    const auto entries = booth.entries();
    const Rejudged done = rejudge(booth.office, {"iso-5817-2023", "", {}});
    CHECK(booth.entries() == entries);
    CHECK(done.compared == 3);
    REQUIRE(done.flips.size() == 1);
    CHECK(done.flips[0].mark == "T-2");
    CHECK(done.flips[0].before.verdict == Verdict::accept);
    CHECK(done.flips[0].before.rules.empty());
    CHECK(done.flips[0].after.verdict == Verdict::reject);
    CHECK(done.flips[0].after.set == "iso-5817-2023");
    CHECK(done.flips[0].after.class_id == "C");
    CHECK(done.flips[0].after.rules == std::vector<std::string>{"penetration-thick"});
    CHECK(done.rules.at("iso-5817: penetration-thick").before == 1);
    CHECK(done.rules.at("iso-5817-2023: penetration-thick").after == 2);
    REQUIRE(done.left_out.size() == 1);
    CHECK(done.left_out[0].mark == "T-4");
    CHECK_THAT(done.left_out[0].why, says("names no criteria"));
}

TEST_CASE("another class of the other set is compared where it is named; one that it lacks is told") {
    Booth booth;
    penetrated(booth, "T-1", "2.8");
    const Rejudged strict = rejudge(booth.office, {"iso-5817", "B", {}}); // 1 + 0.2 b = 1.8 mm
    REQUIRE(strict.flips.size() == 1);
    CHECK(strict.flips[0].after.class_id == "B");
    const Rejudged lacking = rejudge(booth.office, {"aws-d17.1", "Z", {}});
    CHECK(lacking.compared == 0);
    REQUIRE(lacking.left_out.size() == 1);
    CHECK_THAT(lacking.left_out[0].why, says("aws-d17.1 has no class 'Z'; expected A, B or C"));
    CHECK_THROWS_AS(rejudge(booth.office, {"iso-58", "", {}}), DataError);
    Selection nobody;
    nobody.cohort = "autumn";
    CHECK(rejudge(booth.office, {"iso-5817", "", nobody}).compared == 0);
}
