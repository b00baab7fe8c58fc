// criteria compare on the command line.
#include "catch.hpp"
#include "cli/json.hpp"

using namespace beadbook::test;

TEST_CASE("two editions side by side: only what differs is a table", "[catalogue]") {
    const Program run;
    const std::string out = run.ok({"criteria", "compare", "iso-5817", "iso-5817-2023", "--class", "C"});
    CHECK_THAT(out, says("looser or equal") && says("over 3 mm") && says("0.6 x width") &&
                        says("0.45 x width") && says("Equal at every thickness:"));
    CHECK_THAT(out, says("second hand") && says("An aid, not the code"));
    CHECK_THAT(run.ok({"criteria", "compare", "iso-5817", "--class", "B"}),
               says("Every limit is equal at every thickness"));
}

TEST_CASE("two classes side by side, in the reader's unit", "[catalogue]") {
    const Program run;
    const auto both =
        json(run, {"criteria", "compare", "iso-5817", "iso-5817", "--class", "B", "--as-class", "C"});
    REQUIRE(both["compared"].size() == 1);
    bool stricter = false;
    for (const auto &thing : both["compared"][0]["things"])
        for (const auto &one : thing["thickness"]) {
            CHECK(one["first is"] != "looser");
            stricter = stricter || one["first is"] == "stricter";
        }
    CHECK(stricter);
    CHECK(json(run, {"criteria", "compare", "iso-5817", "--class", "B", "--as-class", "C"}) == both);
    const auto inches =
        json(run, {"criteria", "compare", "iso-5817", "--class", "B", "--as-class", "C", "--units", "in"});
    // Each number is in inches; what stands as written keeps its own unit.
    std::size_t numbers = 0, edges = 0;
    for (const auto &thing : inches["compared"][0]["things"])
        for (const auto &one : thing["thickness"])
            for (const char *end : {"from", "to"}) {
                if (!one.contains(end)) continue;
                CHECK_THAT(one[end]["text"].get<std::string>(), Catch::EndsWith(" in"));
                ++numbers;
                edges += one[end] == nlohmann::json{{"text", "0.1181 in"}, {"exact", "3000000"}};
            }
    CHECK_THAT(
        run.ok({"criteria", "compare", "iso-5817", "--class", "B", "--as-class", "C", "--units", "in"}),
        says("over 0.1181 in") && !says("from 0.1181 in"));
    CHECK(numbers > 50);
    CHECK(edges > 0);
    // All classes of the same name in turn.
    CHECK(json(run, {"criteria", "compare", "iso-5817", "iso-5817-2023"})["compared"].size() == 3);
}

TEST_CASE("where two sets do not leave out the same, all that each leaves out is told", "[catalogue]") {
    const Program run;
    write_file(run.file("own.yaml"), R"(set: own
title: t
edition: e
extends: iso-23277
relevance:
  - {id: tiny, types: any, exams: PT, ignore: size at most 0.5 mm, clause: c, standing: {house: example}}
)");
    const std::string out =
        run.ok({"criteria", "compare", "iso-23277", run.file("own.yaml"), "--class", "2"});
    CHECK_THAT(out, says("not counted in own 2: size at most 0.5 mm, of any imperfection, by PT"));
    CHECK_THAT(out, says("not counted in iso-23277 2: "));
}

TEST_CASE("compare says which class is to be named", "[catalogue]") {
    const Program run;
    const Run none = run({"criteria", "compare", "iso-5817", "mil-hdbk-1890-table-3"});
    CHECK(none.code != 0);
    CHECK_THAT(none.err,
               says("which goes with which? iso-5817 has B, C and D, mil-hdbk-1890-table-3 has 1, 2 and 3"));
    const Run other = run({"criteria", "compare", "iso-5817", "mil-hdbk-1890-table-3", "--class", "B"});
    CHECK_THAT(other.err, says("which class of mil-hdbk-1890-table-3 goes with class B of iso-5817?") &&
                              says("--as-class"));
    // EN 1090-2 says which level each of its classes is.
    CHECK_THAT(run.ok({"criteria", "compare", "iso-5817", "en-1090-2", "--class", "B"}), says("EXC3"));
    CHECK_THAT(run({"criteria", "compare", "iso-5817", "--class", "E"}).err, says("has no class 'E'"));
    CHECK(run({"criteria", "show", "iso-5817", "--as-class", "C"}).code == 2);
    CHECK(run({"criteria", "compare", "nothing"}).code == 3);
}

TEST_CASE("a comparison goes on a page", "[catalogue]") {
    const Program run;
    run.ok({"criteria", "compare", "en-1090-2", "iso-5817", "--class", "EXC3", "--as-class", "B", "--html",
            run.file("x.html")});
    CHECK_THAT(read_file(run.file("x.html")),
               says("en-1090-2 EXC3 beside iso-5817 B") && says("comparison") && says("no limit"));
}
