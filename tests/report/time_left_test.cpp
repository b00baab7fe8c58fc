#include "catch.hpp"
#include "report/people_document.hpp"

namespace beadbook {

TEST_CASE("what ends today is told so, not in nought days") {
    CHECK(time_left(0) == "today");
    CHECK(time_left(1) == "in 1 day");
    CHECK(time_left(-2) == "over for 2 days");
}

} // namespace beadbook
