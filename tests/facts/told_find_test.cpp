#include "facts/told_find.hpp"

#include "catch.hpp"
#include "facts/commented_find.hpp"
#include "facts/exam_record.hpp"
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
                             "none found, one crack",
                             "not free of cracks",
                             "not crack-free",
                             "undercut gauge showed a crack",
                             "crack removed",
                             "toe angle 70 deg at 3:00",
                             "crack at 0"}) {
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
                             "gauge G-3",
                             "gauge 3",
                             "hi-lo gauge used",
                             "track 3",
                             "tungsten electrode WT20",
                             "linear scale at 12:00",
                             "leg 1/4 as asked",
                             "arc strikes: 0",
                             "0 cracks",
                             "spatter brushed off",
                             "slag was removed",
                             "oxide wiped",
                             "free of undercut",
                             "free from cracks and pores",
                             "surface slag removed before exam",
                             "crack detector spray lot 17",
                             "Crack-free",
                             "crack free",
                             "undercut gauge G-3 used",
                             "toe angle checked",
                             "cap height 1.5 mm",
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
    for (const char *remark : {"also a crack",
                               "crack",
                               "crack?",
                               "crack at its end",
                               "with crack in it",
                               "beside a crack",
                               "second one at 60",
                               "and another one at 200",
                               "also at 200, 250, 290",
                               "2 more at 7:00",
                               "sharp notch at the end, max .012",
                               "1/8 in deep at the end",
                               "tight line at toe",
                               "hole next to it .06",
                               "continuous to 9:00, deepest .020",
                               "not .01 but .04",
                               "size .04",
                               "not smooth",
                               "d .008 at mid",
                               "through wall",
                               "ditto 7:00",
                               "same at 9",
                               "undersize at 6:00",
                               "bleeds out to .06 after 10 min"})
        CHECK_FALSE(other("undercut l 3/8 d 0.005 at 1 # " + std::string(remark)).empty());
    for (const char *line :
         {"undercut l 3/8 d 0.005 at 1 # undercut 3/8 at 1", "lack of fusion from 2 to 2.4 # side wall",
          "undercut l 3/8 d 0.005 at 1 # no crack at 4", "crack .2 at 3 # MT saw it too",
          "undercut l 3/8 d 0.005 at 1 # gauge 3",
          "undercut l 3/8 d 0.005 at 1 # also seen by the foreman at 1",
          "undercut l 3/8 d 0.005 at 1 # not a crack", "undercut l 3/8 d 0.005 at 1 # no other at 4",
          "pore .02 at 3 # gas pore", "pore .02 at 3 # .02 by gauge", "pore .02 in at 3 # 0.508 mm",
          "pore .02 at 3 # no sharp edge", "pore .02 at 3 # measured on photo 0123456789ab \u00b1 0.0143 in",
          "pore .02 at 3 # film 2", "undercut l 3/8 d 0.005 at 1 # gauge 0.2"}) {
        INFO(line);
        CHECK(other(line) == "");
    }
}

TEST_CASE("what stands behind none neither tells a find nor takes none back") {
    for (const char *remark : {"except A-2",
                               "half of it only, rest tomorrow",
                               "not seen from the root",
                               "hole 0.2 3:00",
                               "crk at 3",
                               "no crack except at 3:00",
                               "0.2 at 3:00",
                               "crk 0.2 at 3:00",
                               "ind at 3:00 0.3 long",
                               "indication at stop",
                               "2 indications, see photo",
                               "LOF near stop",
                               "linear near stop",
                               "one defect ground out",
                               "hole 0.2",
                               "3/16 long",
                               "all but A-2",
                               "not done yet",
                               "2 pores 0.05",
                               "one toe rough, notch",
                               "bleeds a bit at the stop",
                               "2",
                               "crack at 3:00"}) {
        INFO(remark);
        CHECK_FALSE(not_behind_none("# " + std::string(remark)).empty());
        CHECK((std::string(remark) == "2" || note_tells_find(remark)));
    }
    for (const char *remark : {"",
                               "gauge G-3",
                               "track 3",
                               "tungsten electrode WT20",
                               "linear scale at 12:00",
                               "leg 1/4 as asked",
                               "arc strikes: 0",
                               "spatter brushed off",
                               "slag removed",
                               "oxide wiped",
                               "free of undercut",
                               "clean, light good",
                               "Crack-free",
                               "undercut gauge G-3 used",
                               "toe angle checked",
                               "500 lx at 0.3 m",
                               "9:30 am",
                               "done at 10:15",
                               "welded at 20 C",
                               "plate 24 in long",
                               "cracks not seen",
                               "no cracks at 3:00",
                               "lamp 3"}) {
        INFO(remark);
        CHECK(not_behind_none("# " + std::string(remark)) == "");
        CHECK_FALSE(note_tells_find(remark));
    }
    CHECK_FALSE(note_tells_find("cap height 1.5 mm"));
    CHECK(not_behind_none("# 2 pores 0.05").find("write each of the 2 on a line of its own, 'pores 0.05'") !=
          std::string::npos);
}

TEST_CASE("a comment that speaks of a place, or of how many were found, is asked about") {
    for (const char *line :
         {"# VT 3:00 cr", "# L.O.F. at 3:00", "# not free of cracks", "# VT found 1", "# fissure 0.2 at 3:00",
          "# 3:00 cr", "# 0.2 at 3:30", "# 0.2 long at 3:00", "# ind 3:00", "# defect at 3:00", "# U/C 3:00",
          "# N-12 3:00 cr", "# N-11 has one at 4:00, 0.3 long"}) {
        INFO(line);
        CHECK_FALSE(find_told_in_comment(line).empty());
    }
    for (const char *line :
         {"# free of undercut", "# surface slag removed before exam", "# crack detector spray lot 17",
          "# cleaned again, better light", "# found 0", "# Monday, 9:30 am", "# checked at 3:00",
          "# 3 coupons at 500 lx", "# end of the sheet", "# viewed at 24 in", "# scale at 12:00"}) {
        INFO(line);
        CHECK(find_told_in_comment(line) == "");
    }
}

TEST_CASE("a comment, which is kept nowhere, is looked through for whatever may tell a find", "[comments]") {
    for (const char *words : {"crak near stop",
                              "cracck near stop",
                              "undercutt near stop",
                              "porosty near stop",
                              "LOF near stop",
                              "lack of fusoin near stop",
                              "hairline crck near stop",
                              "indication near stop",
                              "lin ind near stop",
                              "has a fissure at the stop",
                              "linear near stop, look again",
                              "hairline, 2 of them",
                              "incl. near stop",
                              "not fused",
                              "no fusion at root",
                              "undercutting at toe",
                              "burned through",
                              "pin hole",
                              "not fully fused at the stop",
                              "2 indications, see photo",
                              "cracks near stop",
                              "prosity near stop",
                              "a flaw near stop",
                              "incompl fusion near stop"}) {
        INFO(words);
        CHECK_FALSE(find_told_in_comment("# X-8 " + std::string(words)).empty());
        CHECK_FALSE(why_no_comment("# " + std::string(words)).empty());
    }
    for (const char *words : {"bay 3, north light",
                              "Monday, second shift",
                              "gauge G-4",
                              "started at 9:30",
                              "welds cleaned by brush",
                              "no indications",
                              "no crak",
                              "spot check by B. Dean",
                              "linear scale used",
                              "split shift",
                              "hi-lo gauge G-5",
                              "root ground and brushed",
                              "low light, lamp moved",
                              "calibrated before use",
                              "film 3 of 5",
                              "cap side first",
                              "see sheet 12",
                              "weather dry, 18 C",
                              "rack 4",
                              "core sample kept",
                              "no fusion problems",
                              "undercut gauge used",
                              "more light asked for",
                              "ports 2 and 3 shut",
                              "preheat 50 C",
                              "stopped for lunch",
                              "instructor present",
                              "stringer beads",
                              "interpass brushed",
                              "electrode box 7 opened",
                              "tested with the new yoke",
                              "cable changed"}) {
        INFO(words);
        CHECK(why_no_comment("# " + std::string(words)) == "");
    }
}

TEST_CASE("a note or a remark is heard where its words are sure, and not by words of much else",
          "[comments]") {
    for (const char *text :
         {"crak near stop", "has a fissure at the stop", "hairline, 2 of them", "not fused",
          "no fusion at root", "pin hole", "undercutting at toe", "burned through", "undercutt near stop",
          "porosty near stop", "lack of fusoin near stop"}) {
        INFO(text);
        CHECK_FALSE(told_in(text).empty());
        CHECK(note_tells_find(text));
    }
    for (const char *text : {"linear scale, lamp 2", "incl. the end tabs", "spots of paint brushed off",
                             "track 3", "racks 2 and 3", "black light used", "no fusion problems",
                             "free of fissures", "the plate was split by saw", "backing bar tacked"}) {
        INFO(text);
        CHECK(told_in(text).empty());
    }
    CHECK(is_planar_find(told_in("crak near stop").front()));
    CHECK(is_planar_find(told_in("not fused").front()));
}

TEST_CASE("a condition whose name names a find is none where its value takes that back") {
    for (const char *text : {"surface=as welded", "slag=removed", "spatter=none", "surface=brushed"}) {
        INFO(text);
        ExamRecord exam;
        CHECK_NOTHROW(add_condition(exam, text));
        CHECK(exam.conditions.size() == 1);
    }
    for (const char *text : {"crack=0.2 at 3:00", "crack=yes", "pore=small", "surface=pore", "slag=0.2",
                             "undercut=some", "spatter=a little"}) {
        INFO(text);
        ExamRecord exam;
        CHECK_THROWS(add_condition(exam, text));
    }
}
