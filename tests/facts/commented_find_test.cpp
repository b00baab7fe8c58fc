#include "facts/commented_find.hpp"

#include "catch.hpp"

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
