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
    const std::string all = run({"judge", "--all"}).out;
    CHECK(all.find("; words written beside it") != all.npos);
    CHECK(all.find("words written beside it") == all.rfind("words written beside it"));
    const std::string summary = run({"summary"}).out;
    CHECK(summary.find("3 decided coupons name no welder") != summary.npos);
    CHECK(summary.find("later attempt") == summary.npos);
    const Run graded = run({"grade", "passed", "--all", "--verdict", "accept", "--by", "B. Dean"});
    CHECK(graded.out.find("written beside it: ") != graded.out.npos);
    CHECK(graded.out.find("hard") != graded.out.npos);
}

TEST_CASE("the reason of a finish, an opening or a correction stands beside the verdict", "[cli]") {
    const Program run;
    run.ok({"register",   "N-1..N-2", "--criteria",  "ufgs-15216n", "--class",          "pressure piping",
            "--joint",    "groove",   "--form",      "tube",        "--seam",           "girth",
            "--diameter", "2in",      "--thickness", "0.065in",     "--weld-thickness", "full",
            "--magnetic", "no",       "--process",   "GTAW",        "--material",       "stainless steel"});
    run.ok({"exam", "N-1..N-2", "VT,PT", "--examiner", "A. Field", "--level", "II"});
    run.ok({"finish", "N-1", "VT PT", "--found", "none", "--why", "the lamp was weak"});
    run.ok({"finish", "N-2", "VT PT", "--found", "none"});
    const std::string list = run({"coupons"}).out;
    CHECK(list.find("words written beside it") != list.npos);
    CHECK(list.find("words written beside it") == list.rfind("words written beside it"));
    const auto beside = [&](const char *command, const char *mark) {
        const std::string out = run({command, mark}).out;
        const std::size_t at = out.find("Written beside it");
        return at == out.npos ? std::string() : out.substr(at);
    };
    for (const char *command : {"judge", "why"}) {
        CHECK(beside(command, "N-1").find("exam 1 (VT), why: the lamp was weak") != std::string::npos);
        CHECK(beside(command, "N-2") == "");
    }
    CHECK(run({"show", "N-1"}).out.find("the lamp was weak") != std::string::npos);
    run.ok({"reopen", "N-2", "1", "--why", "the root was dark"});
    run.ok({"log", "N-2", "gas pore 0.01 at 1in"});
    run.ok({"correct", "N-2", "1", "gas pore 0.012 at 1in", "--why", "scale held askew"});
    run.ok({"finish", "N-2", "1", "--as-logged"});
    const std::string why = beside("judge", "N-2");
    CHECK(why.find("exam 1 (VT), why: the root was dark") != why.npos);
    CHECK(why.find("#1, why: scale held askew") != why.npos);
    CHECK(why.find("finished with") == why.npos);
}
