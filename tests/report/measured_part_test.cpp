// How much of the weld was measured of what a set wants measured, and what has nothing beside it.
#include "case.hpp"
#include "catch.hpp"
#include "measure/text.hpp"
#include "operations/booth.hpp"
#include "render/text.hpp"
#include "report/judgement_document.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// Of a fillet that is 6 in long, what is said of its size.
std::string said_of(const std::vector<std::string> &lines) {
    Booth booth;
    booth.fillet();
    booth.exam(Exam::VT);
    for (const auto &line : lines) booth.log(line);
    booth.finish(1);
    const Judged judged = judge_coupon(booth.office, booth.office.coupon("T-1"), {});
    REQUIRE(judged.verdict() == Verdict::accept);
    const std::string all = text(document_of(judged));
    const auto at = all.find("Measured as the set wants");
    REQUIRE(at != std::string::npos);
    const std::string said = all.substr(at, all.find("- ", at) - at);
    std::string out;
    for (const auto word : words_of(said)) out += (out.empty() ? "" : " ") + std::string(word);
    return out;
}

} // namespace

TEST_CASE("of what the set wants measured it is said over how much of the weld it was") {
    CHECK_THAT(said_of({"fillet size 1/4in from 0in to 0.2in"}), says("(#1, over 0.2 in of 6 in)"));
    CHECK_THAT(said_of({"fillet size 1/4in from 0in to 2in", "fillet size 1/4in from 1in to 3in"}),
               says("(#1, over 3 in of 6 in)"));
    CHECK_THAT(said_of({"fillet size 1/4in from 0in to 6in"}), says("(#1)"));
    CHECK_THAT(said_of({"fillet size 1/4in from 0in to 3in", "fillet size 1/4in from 3in to 6in"}),
               says("(#1)"));
    CHECK_THAT(said_of({"fillet size 1/4in"}), says("(#1)"));
}

TEST_CASE("of a lone find no gap to the nearest is printed") {
    const auto c =
        judged(set_from(head() + "rules:\n  - {id: apart, types: porosity, exams: RT, measure: nearest gap, "
                                 "at least: 1 in, clause: c, standing: {house: x}}\n"),
               {"", {"RT gas pore 0.05 at 3"}});
    REQUIRE(c.verdicts() == "A accept, B accept");
    REQUIRE(c.judgement.classes[0].nearest);
    CHECK_THAT(sentence(c.view(), 0, *c.judgement.classes[0].nearest),
               says("nearest gap none, at least 1 in: within"));
}
