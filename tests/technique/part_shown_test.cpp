#include "technique/part_shown.hpp"

#include "catch.hpp"

using namespace beadbook;

TEST_CASE("one exposure through both walls does not show all of a girth weld") {
    Coupon straight, girth;
    girth.line.closed = true;
    for (const char *view : {"double wall single image", "ellipse", "superimposed"}) {
        INFO(view);
        CHECK_FALSE(part_not_shown({{"view", view}, {"exposures", "1"}}, girth).empty());
        CHECK(part_not_shown({{"view", view}, {"exposures", "2"}}, girth).empty());
        CHECK(part_not_shown({{"view", view}}, girth).empty());
        CHECK(part_not_shown({{"view", view}, {"exposures", "1"}}, straight).empty());
    }
    CHECK(part_not_shown({{"view", "panoramic"}, {"exposures", "1"}}, girth).empty());
    CHECK(part_not_shown({{"view", "single wall"}, {"exposures", "1"}}, girth).empty());
    CHECK(part_not_shown({{"exposures", "1"}}, girth).empty());
}
