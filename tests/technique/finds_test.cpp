#include "catch.hpp"
#include "technique/finds.hpp"
#include "technique/plausible.hpp"

using namespace beadbook;

namespace {

const Vocabulary &words() { return Vocabulary::shipped(); }

Finds::Grade grade(const std::string &type, Exam method, const Coupon &coupon = {}) {
    for (const auto &f : finds(words(), *words().find(type), coupon))
        if (f.method == method) return f.grade;
    FAIL();
    return Finds::Grade::no;
}

std::string doubt(const std::string &type, const std::string &process) {
    return implausible(words(), *words().find(type), process);
}

} // namespace

TEST_CASE("which method finds what: austenitic gets no MT, volumes show on film, planes do not",
          "[published]") {
    // T.O. 33B-1-1 pages 611 and 612, AC 43.13-1B chapter 5.
    Coupon austenitic;
    austenitic.facts[static_cast<std::size_t>(Fact::magnetic)] = word_index(info(Fact::magnetic), "no");
    CHECK(grade("crack", Exam::MT, austenitic) == Finds::Grade::no);
    CHECK(grade("crack", Exam::MT) == Finds::Grade::well);
    CHECK(grade("crack", Exam::PT, austenitic) == Finds::Grade::well);
    CHECK(grade("gas pore", Exam::RT) == Finds::Grade::well);
    CHECK(grade("tungsten inclusion", Exam::RT) == Finds::Grade::well);
    CHECK(grade("incomplete fusion", Exam::RT) == Finds::Grade::partly);
    CHECK(grade("gas pore", Exam::PT) == Finds::Grade::partly);
    CHECK(grade("undercut", Exam::VT) == Finds::Grade::well);
    CHECK(grade("undercut", Exam::PT) == Finds::Grade::no);
    Coupon fillet;
    fillet.facts[static_cast<std::size_t>(Fact::joint)] = word_index(info(Fact::joint), "fillet");
    CHECK(grade("gas pore", Exam::RT, fillet) == Finds::Grade::no);
    // Every type gets an answer from every method, with a reason.
    for (std::size_t t = 0; t < words().size(); ++t)
        for (const auto &f : finds(words(), static_cast<TypeId>(t), {})) CHECK_FALSE(f.why.empty());
}

TEST_CASE("tungsten from a wire process and slag from gas tungsten arc are doubted") {
    CHECK_THAT(doubt("tungsten inclusion", "GMAW"), says("no tungsten electrode"));
    CHECK(doubt("tungsten inclusion", "GTAW").empty());
    CHECK(doubt("tungsten inclusion", "GTAW 1/8in + SMAW 3/8in").empty());
    CHECK_THAT(doubt("slag inclusion", "GTAW"), says("no flux"));
    CHECK(doubt("slag inclusion", "GTAW 1/8in + SMAW 3/8in").empty());
    CHECK(doubt("slag inclusion", "SMAW").empty());
    CHECK(doubt("slag inclusion", "").empty());
    CHECK(doubt("gas pore", "GTAW").empty());
}
