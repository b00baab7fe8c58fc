#include "case.hpp"
#include "catch.hpp"
#include "report/standings.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::string words_for(const std::vector<std::string> &log, const std::string &exams = "RT") {
    const std::string rest = "measure: size, clause: c, ";
    const JudgedCase one =
        judged(set_from("set: s\ntitle: t\nedition: e\nunits: in\nclasses: [A]\nscope: not read\n"
                        "required exams: [{id: film, one of: RT, clause: c, standing: {memory: x}}]\nrules:\n"
                        "  - {id: a, types: porosity, exams: RT, at most: 0.06 in, standing: {read: x}, " +
                        rest +
                        "must be measured: no}\n  - {id: b, types: inclusion, exams: RT, at most: 0.1 in, "
                        "standing: {second hand: x}, " +
                        rest + "must be measured: no}\n"),
               {"thickness=1/4in joint=groove material=steel", log, exams});
    return standing_words(standings_behind(one.judgement.classes[0], *one.set, 0));
}

} // namespace

TEST_CASE("how sure the clauses behind a verdict are is counted, of each verdict") {
    // Rejected by both rules, twice by the first.
    CHECK(words_for({"RT gas pore 0.07 at 1", "RT gas pore 0.08 at 2", "RT slag 0.2 at 3"}) ==
          "How sure: of the 2 clauses behind it 1 was read in the standard and 1 was read second hand");
    CHECK(words_for({"RT gas pore 0.07 at 1"}) ==
          "How sure: the one clause behind it was read in the standard");
    // Nobody can say, because the film that memory asks for is missing.
    CHECK(words_for({}, "VT") == "How sure: the one clause behind it is from memory");
    // Accepted: by the proof, the film too.
    CHECK(words_for({"RT gas pore 0.05 at 1"}) ==
          "How sure: of the 2 clauses behind it 1 was read in the standard and 1 is from memory");
}
