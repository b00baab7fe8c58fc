// Marks that read alike.
#include "operations/welder_meant.hpp"

#include "catch.hpp"

using namespace beadbook;

TEST_CASE("capitals, zeros, blanks, points and look-alike letters tell no two marks apart") {
    for (const char *other : {"l1", "L 1", "L01", "L1.", "L-1", "\xEF\xBC\xAC\x31"})
        CHECK(read_alike("L1", other));
    for (const char *other : {"L2", "L11", "L10", "M1", "", "-"}) CHECK_FALSE(read_alike("L1", other));
    CHECK_FALSE(read_alike("-", ".."));
}
