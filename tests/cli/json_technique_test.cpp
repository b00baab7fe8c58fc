// valid, methods and compute print JSON as their schemas say, with what their text says.
#include "catch.hpp"
#include "cli/json.hpp"

using namespace beadbook::test;

namespace {

void unmagnetic_tube(const Program &run) {
    run.ok({"register", "T-1", "--criteria", "mil-hdbk-1890-table-3", "--class", "2", "--joint", "groove",
            "--form", "tube", "--thickness", "0.150in", "--diameter", "2in", "--weld-length", "8in",
            "--magnetic", "no"});
}

} // namespace

TEST_CASE("JSON of the validity of exams, judged and not", "[technique]") {
    const Program run;
    unmagnetic_tube(run);
    CHECK(json(run, {"valid", "T-1"}, 5).empty()); // nothing was examined
    run.ok({"exam", "T-1", "MT", "--examiner", "A. Field", "--level", "II"});
    run.ok({"exam", "T-1", "VT", "--examiner", "A. Field", "--level", "II", "--practice", "asme-v-vt",
            "--condition", "light=60 fc", "--condition", "distance=20 in"});
    const auto valid = json(run, {"valid", "T-1"}, 1);
    REQUIRE(valid.size() == 2);
    CHECK(valid[0]["valid"] == "not judged");
    CHECK(valid[0]["findings"].empty());
    CHECK(valid[1]["valid"] == "not valid");
    CHECK(valid[1]["practice"] == "asme-v-vt");
    CHECK(valid[1]["kept"] == true);
    CHECK(valid[1]["findings"][0]["holds"] == "no");
    CHECK_THAT(valid[1].dump(), says("\"lacks\":[\"angle\"]"));
    CHECK(valid[1]["gaps"].empty());
    run.ok({"exam", "T-1", "MT", "--examiner", "A. Field", "--level", "II", "--practice", "t9074-mt"});
    CHECK_THAT(json(run, {"valid", "T-1"}, 1)[2]["gaps"].dump(), says("ambient light under UV-A\"}"));
    CHECK_THAT(json(run, {"practice", "show", "t9074-mt"})["gaps told"].dump(), says("particles is wet"));
    const Run text = run({"valid", "T-1"});
    CHECK_THAT(text.out, says("names no practice, so its conditions are not judged"));
    CHECK_THAT(text.out, says(": not valid\n"));
}

TEST_CASE("JSON of methods: what each finds, and what the coupon's class requires of it", "[technique]") {
    const Program run;
    unmagnetic_tube(run);
    const auto methods = json(run, {"methods", "T-1", "--look-for", "crack"});
    REQUIRE(methods.size() == 4);
    for (const auto &one : methods) {
        CHECK(one["imperfection"] == "crack");
        if (one["method"] == "MT") {
            CHECK(one["finds"] == "cannot");
            CHECK(one["required"].empty()); // PT takes its place on metal that is not magnetic
        }
        if (one["method"] == "VT") {
            REQUIRE(one["required"].size() == 1);
            CHECK(one["required"][0]["class"] == "2");
            CHECK(one["required"][0]["criteria"] == "mil-hdbk-1890-table-3");
        }
    }
    CHECK(json(run, {"methods", "--joint", "fillet"}).size() == 24);
}

TEST_CASE("JSON of calculations: all, one, and one worked out", "[technique]") {
    const Program run;
    const auto list = json(run, {"compute"});
    CHECK(list.size() > 20);
    for (const auto &one : list) {
        const auto wanted = json(run, {"compute", one["name"]});
        CHECK(wanted["title"] == one["title"]);
        CHECK_FALSE(wanted["inputs"].empty());
    }
    const auto shot = json(run, {"compute", "head-shot", "diameter=1.5in"});
    CHECK(shot["inputs"]["diameter"] == "1.5in");
    CHECK(shot["results"]["current"] == "750 A");
}
