// What stands beside an accept in people's own words is told where accepts are listed.
#include "catch.hpp"
#include "cli/run.hpp"

using namespace beadbook::test;

TEST_CASE("lists and grades mark an accept with words beside it, and a summary tells who names no welder",
          "[cli]") {
    const Program run;
    run.ok({"register",   "N-1..N-3", "--criteria",  "ufgs-15216n", "--class",          "pressure piping",
            "--joint",    "groove",   "--form",      "tube",        "--seam",           "girth",
            "--diameter", "2in",      "--thickness", "0.065in",     "--weld-thickness", "full",
            "--magnetic", "no",       "--process",   "GTAW",        "--material",       "stainless steel"});
    run.ok({"exam", "N-1..N-3", "VT,PT", "--examiner", "A. Field", "--level", "II", "--found", "none"});
    run.ok({"remark", "N-2", "the root was hard to see"});
    const std::string list = run({"coupons"}).out;
    CHECK(list.find("words written beside it") != list.npos);
    CHECK(list.find("words written beside it") == list.rfind("words written beside it"));
    const std::string summary = run({"summary"}).out;
    CHECK(summary.find("3 decided coupons name no welder") != summary.npos);
    CHECK(summary.find("later attempt") == summary.npos);
    const Run graded = run({"grade", "passed", "--all", "--verdict", "accept", "--by", "B. Dean"});
    CHECK(graded.out.find("written beside it: ") != graded.out.npos);
    CHECK(graded.out.find("hard") != graded.out.npos);
}
