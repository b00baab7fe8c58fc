#include "report/finding_place.hpp"

#include "case.hpp"
#include "catch.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// By a count or sum of pores in 3 in.
JudgedCase in_three_inches(const std::string &measure, const std::string &coupon,
                           const std::vector<std::string> &log) {
    return judged(set_from(head() + "rules: [{id: r, types: porosity, exams: RT, measure: " + measure +
                           ", window: 3 in, at most: " + (measure == "count" ? "'1'" : "0.05 in") +
                           ", clause: c, standing: {house: x}}]\n"),
                  {coupon, log});
}

void counted(const JudgedCase &c, const std::string &finds, const std::string &window) {
    CHECK_THAT(c.sentences("A"), Catch::Contains(finds));
    CHECK_THAT(c.sentences("A"), Catch::Contains("counted from " + window + "."));
}

const std::string girth = "form=tube seam=girth diameter=2in";

} // namespace

TEST_CASE("a window begins where the first of its finds does, and holds the last") {
    for (const std::string measure : {"count", "sum of size"})
        counted(in_three_inches(measure, "weld-length=40in",
                                {"RT gas pore 0.05 at 10", "RT gas pore 0.05 at 13"}),
                "from 10 in to 13.05 in", "10 in to 13 in");
}

TEST_CASE("a window that cuts its first find stays where it holds both") {
    counted(in_three_inches("count", "weld-length=40in",
                            {"RT gas pore l 0.5 s 0.5 at 10", "RT gas pore 0.05 at 13.2"}),
            "from 10 in to 13.25 in", "10.2 in to 13.2 in");
}

TEST_CASE("a window at the end of a weld ends with it") {
    counted(in_three_inches("count", "weld-length=8in", {"RT gas pore 0.05 at 7", "RT gas pore 0.05 at 7.5"}),
            "from 7 in to 7.55 in", "5 in to 8 in");
}

TEST_CASE("a window round a tube lies on its first turn, or over the datum") {
    for (const std::string measure : {"count", "sum of size"}) {
        counted(in_three_inches(measure, girth, {"RT gas pore 0.05 at 1in", "RT gas pore 0.05 at 1.8"}),
                "from 1 in to 1.85 in", "1 in to 4 in");
        counted(in_three_inches(measure, girth, {"RT gas pore 0.05 at 6.2in", "RT gas pore 0.05 at 1.8"}),
                "from 6.2 in over the datum to 1.85 in", "6.2 in over the datum to 2.9168 in");
    }
    counted(in_three_inches("count", girth, {"RT gas pore l 1 s 1 at 5in", "RT gas pore 0.05 at 1.9"}),
            "from 5 in over the datum to 1.95 in", "5.1832 in over the datum to 1.9 in");
}
