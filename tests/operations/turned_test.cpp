#include "operations/turned.hpp"

#include "catch.hpp"
#include "operations/booth.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// Whether it is told of a find in an exam that is still open, and that is withdrawn at a time.
bool told_when_withdrawn(const std::string &find, const std::string &at, const std::string &who = "tester") {
    Booth booth;
    booth.coupon();
    booth.exams();
    booth.log(find);
    booth.outside.now = [at] { return at; };
    booth.write([](Writing &w) { return withdraw_indication(w, "T-1", 1, "was scale"); }, who);
    return !turned(booth.office, "T-1").empty();
}

} // namespace

// It was logged at 10:00:00 by tester.
TEST_CASE("a crack is taken back of an open exam at once, or is told as a reject that was made to go") {
    CHECK_FALSE(told_when_withdrawn("crack l 0.2 at 3", "2026-11-25T10:10:00Z"));
    CHECK(told_when_withdrawn("crack l 0.2 at 3", "2026-11-25T10:10:01Z"));
    CHECK(told_when_withdrawn("crack l 0.2 at 3", "2026-11-25T10:00:01Z", "somebody else"));
}

TEST_CASE("what is no crack is looked over within the shift") {
    CHECK_FALSE(told_when_withdrawn("gas pore 0.4 at 3", "2026-11-25T18:00:00Z"));
    CHECK(told_when_withdrawn("gas pore 0.4 at 3", "2026-11-25T18:00:01Z"));
    CHECK(told_when_withdrawn("gas pore 0.4 at 3", "2026-11-25T10:00:01Z", "somebody else"));
    CHECK_FALSE(told_when_withdrawn("gas pore 0.01 at 3", "2026-11-26T10:00:00Z")); // it rejected nothing
}
