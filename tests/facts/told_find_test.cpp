#include "facts/told_find.hpp"

#include "catch.hpp"
#include "facts/commented_find.hpp"
#include "facts/log_line.hpp"

using namespace beadbook;

TEST_CASE("a text that tells a find is heard, whatever hides it") {
    for (const char *text : {"G-12 VT cra .2 3:00",
                             "G-12 VT crak .2 3:00",
                             "G-12 VT none, MT has a crack",
                             "none but a crack",
                             "arc strikes",
                             "cold lap 3:00",
                             "lack-of-fusion at 3",
                             "crater",
                             "MT lin .2 3:00",
                             "indication .2 at 3:00",
                             "except G-2 crack at 3:00",
                             "small crack at 3:00",
                             "G-5 crack",
                             "3/16 line at 3:00",
                             "the toe is cracked at 3:00",
                             "no cracks at the root. Undercut at the cap",
                             "G-12 VT none MT crack",
                             "no pores; a crack at 3:00",
                             "undrecut l .3",
                             "crak",
                             "cr .2 3:00",
                             "none found, one crack"}) {
        INFO(text);
        CHECK_FALSE(told_in(text).empty());
        CHECK_FALSE(word_of_find("# " + std::string(text)).empty());
    }
}

TEST_CASE("a text that denies a find, or is of something else, tells none") {
    for (const char *text : {"",
                             "no cracks",
                             "no cracks and no pores",
                             "cracks: none",
                             "looked for cracks",
                             "without undercut",
                             "not cracked",
                             "root side, 3 o'clock",
                             "root",
                             "cold",
                             "end",
                             "end of the sheet",
                             "Monday, 3 coupons",
                             "MT on Monday 3",
                             "9:30 am",
                             "29.11. Monday",
                             "weld 3 of 5 cleaned",
                             "checked at 3:00",
                             "4 o'clock",
                             "low light at 3:00 pm",
                             "G-12 is 3 days old",
                             "in 3 pieces",

                             "argon 15.5",
                             "face 3:00",
                             "lamp B",
                             "1/2 in plate"}) {
        INFO(text);
        const auto told = told_in(text);
        INFO((told.empty() ? "" : told.front().word));
        CHECK(told.empty());
    }
}

TEST_CASE("a remark that tells a find of its own is asked about, and one of the same find is not") {
    const auto other = [&](const std::string &line) {
        const auto find = parse_log_line(line, {}, Unit::inch);
        return other_find_in_remark(find, {}, Unit::inch);
    };
    CHECK(other("undercut l 3/8 d 0.005 at 1 smooth # crack .2 at 4") == "crack .2 at 4");
    CHECK(other("undercut l 3/8 d 0.005 at 1 # and a pore 0.02") == "and a pore 0.02");
    CHECK(other("undercut l 3/8 d 0.005 at 1 # crak .2 at 4") == "crak .2 at 4");
    CHECK(other("undercut l 3/8 d 0.005 at 1 # undercut .2 at 4") == "undercut .2 at 4");
    for (const char *line :
         {"undercut l 3/8 d 0.005 at 1 # undercut 3/8 at 1", "lack of fusion from 2 to 2.4 # side wall",
          "undercut l 3/8 d 0.005 at 1 # no crack at 4", "crack .2 at 3 # MT saw it too",
          "undercut l 3/8 d 0.005 at 1 # beside a crack", "pore .02 at 3 # gas pore"})
        CHECK(other(line).empty());
}
