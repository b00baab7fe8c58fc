#include "facts/commented_find.hpp"

#include "catch.hpp"
#include "facts/told_spot.hpp"

using namespace beadbook;

TEST_CASE("a comment that begins with a number and a type reads like a find") {
    CHECK(find_in_comment("# 4 crack") == "#4 crack");
    CHECK(find_in_comment("#  12 lack of fusion from 2 to 3") == "#12 lack of fusion from 2 to 3");
    CHECK(find_in_comment("# 4 MT crack long") == "#4 MT crack long");
    CHECK(find_in_comment("# 4 o'clock").empty());
    CHECK(find_in_comment("# seen 4 cracks").empty());
    CHECK(find_in_comment("# 4").empty());
    CHECK(find_in_comment("").empty());
}

TEST_CASE("a remark tells more finds beside it, wherever they are") {
    for (const char *more :
         {"3 more like it", "3 more like it to 7 in", "plus 2 others", "two more beside it",
          "more of the same to 5 in", "one of several", "largest of a group"}) {
        INFO(more);
        CHECK_FALSE(more_told(more).empty());
    }
    for (const char *one :
         {"no more", "no others", "seen once more from the root", "root side", "as of Monday"}) {
        INFO(one);
        CHECK(more_told(one).empty());
    }
}

TEST_CASE("beside none a note may take some of it back") {
    for (const char *note :
         {"film fogged between 3 and 5 in", "yoke failed halfway", "could not see the last inch",
          "last film not developed", "stopped early", "rejected"}) {
        INFO(note);
        CHECK_FALSE(taken_back(note).empty());
    }
    CHECK(taken_back("lamp new, surface as ground").empty());
}

TEST_CASE("a comment that is a type and nothing more, or has a number behind it, reads like a find") {
    CHECK(find_in_comment("# crack 0.2 at 3") == "crack 0.2 at 3");
    CHECK(find_in_comment("## MT crack 0.2 at 3") == "MT crack 0.2 at 3");
    CHECK(find_in_comment("#MT: crack") == "MT: crack");
    CHECK(find_in_comment("#crack") == "crack");
    CHECK(find_in_comment("# crack seen by eye too").empty());
    CHECK(find_in_comment("# crack seen by eye # 3").empty());
    CHECK(find_in_comment("# root side, 3 o'clock").empty());
    CHECK(find_in_comment("# MT on Monday 3").empty());
    CHECK(find_in_comment("crack 0.2 at 3").empty());
}
