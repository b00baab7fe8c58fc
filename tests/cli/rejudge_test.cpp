// rejudge on the command line: a criteria file that was changed in place.
#include "catch.hpp"
#include "cli/json.hpp"
#include "temporary.hpp"

using namespace beadbook::test;

namespace {

std::string shop(const std::string &limit) {
    return "set: shop\ntitle: Shop\nedition: \"1\"\nunits: in\nclasses: [A]\nscope: not read\nrules:\n"
           "  - {id: pore, types: porosity, exams: VT, measure: size, at most: " +
           limit + ", clause: \"1\", standing: {house: example}}\n";
}

} // namespace

TEST_CASE("what a changed criteria file would change is told, and nothing of it is stored", "[listing]") {
    const Program run;
    const std::string file = run.file("shop.yaml");
    write_file(file, shop("0.060 in"));
    run.ok({"register", "T-1", "--criteria", file, "--class", "A", "--joint", "groove", "--thickness",
            "0.15in", "--weld-length", "8in", "--material", "steel"});
    run.ok({"exam", "T-1", "VT", "--examiner", "A. Field", "--level", "II"});
    run.ok({"log", "T-1", "surface pore 0.05 at 2", "--finish"});
    CHECK(json(run, {"rejudge"})["not compared"][0]["why"] == "no verdict of it is on record");
    run.ok({"judge", "T-1"});
    const auto same = json(run, {"rejudge"});
    CHECK(same["compared"] == 1);
    CHECK(same["differ"].empty());
    write_file(file, shop("0.040 in"));
    const auto changed = json(run, {"rejudge"});
    REQUIRE(changed["differ"].size() == 1);
    CHECK(changed["differ"][0]["before"]["verdict"] == "accept");
    CHECK(changed["differ"][0]["after"]["verdict"] == "reject");
    CHECK(changed["differ"][0]["after"]["rules"][0] == "pore");
    const std::string text = run.ok({"rejudge"});
    CHECK_THAT(text, says("1 coupon compared: 1 verdict differs. Nothing of this is stored."));
    CHECK_THAT(text, says("reject by shop, class A: pore"));
    CHECK(run({"rejudge", "--as-class", "A"}).code == 2);
    CHECK(run({"rejudge", "no-such-set"}).code == 3);
    run.ok({"rejudge", "--html", run.file("page.html")});
}
