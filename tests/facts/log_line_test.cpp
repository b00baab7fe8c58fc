#include "catch.hpp"
#include "facts/log_line.hpp"
#include "records/codecs/facts.hpp"

#include "measure/refusal.hpp"
#include <nlohmann/json.hpp>

#include <random>

using namespace beadbook;

namespace {

const WeldLine straight{Length{8 * nm_per_inch}, false};
const WeldLine tube{Length{12 * nm_per_inch}, true};

std::string read_back(const std::string &line, const WeldLine &weld = straight) {
    return print_log_line(parse_log_line(line, weld, Unit::inch));
}

std::string why_not(const std::string &line, const WeldLine &weld = straight) {
    try {
        parse_log_line(line, weld, Unit::inch);
    } catch (const InputError &e) {
        return std::to_string(e.column) + ": " + e.what();
    } catch (const DataError &e) {
        return e.what();
    }
    return "taken";
}

} // namespace

TEST_CASE("short lines are read as a technician means them") {
    CHECK(read_back("pore 0.045 @ 3.2") == "gas pore size 0.045 in at 3.2 in");
    CHECK(read_back("pore 0.045 @3.2") == "gas pore size 0.045 in at 3.2 in");
    CHECK(read_back("gp .045") == "gas pore size .045 in");
    CHECK(read_back("slag .25x.05 @ 4-1/8") == "slag inclusion length .25 in width .05 in at 4-1/8 in");
    CHECK(read_back("slag .05x.25") == "slag inclusion length .25 in width .05 in");
    CHECK(read_back("slag 6mm x 1mm at 10 mm") == "slag inclusion length 6mm width 1mm at 10 mm");
    CHECK(read_back("undercut l 3/8 d 0.010 at 1-1/2 face smooth") ==
          "undercut length 3/8 in depth 0.010 in at 1-1/2 in face smooth");
    CHECK(read_back("lack of fusion from 2 to 2.4 # side wall") ==
          "incomplete fusion from 2 in to 2.4 in # side wall");
    CHECK(read_back("Incomplete Root Penetration l 1/4 side root") ==
          "incomplete root penetration length 1/4 in root");
    CHECK(read_back("ri 1.5 mm at 3:30", tube) == "rounded indication size 1.5 mm at 3:30");
    CHECK(read_back("ri 0.1 at 4 o'clock", tube) == "rounded indication size 0.1 in at 4 o'clock");
    CHECK(read_back("crack at 105 deg", tube) == "crack at 105 deg");
    CHECK(read_back("pore 0.1, at 2, across left 0.2") == "gas pore size 0.1 in at 2 in across left 0.2 in");
    CHECK(read_back("pore 2 3/4 mm mid 3") == "gas pore size 2 3/4 mm mid 3 in");
    CHECK(read_back("weld toe angle angle 105") == "incorrect weld toe angle 105 deg");
    CHECK(read_back("pore area 0.004 in2") == "gas pore area 0.004 in2");
    CHECK(read_back("CRACK L.2 AT 3 FACE SMOOTH") == "crack length .2 in at 3 in face smooth");
    CHECK(read_back("SLAG FROM 2 TO 2.4 Across LEFT 0.2") ==
          "slag inclusion from 2 in to 2.4 in across left 0.2 in");
    CHECK(read_log_line("VT: crack 0.2", straight, Unit::inch).method == Exam::VT);
    CHECK(read_back("pore\t.05\tat\t3\t# a\tb") == "gas pore size .05 in at 3 in # a b");
    CHECK(read_back("slag\t.25\tx\t.05") == "slag inclusion length .25 in width .05 in");
    CHECK(read_back("uc, l 3/8, d .01") == "undercut length 3/8 in depth .01 in");
}

TEST_CASE("a bare number behind the name of an angle is degrees") {
    CHECK(read_back("toe angle 100 at 1") == "incorrect weld toe angle 100 deg at 1 in");
    CHECK(read_back("angular misalignment 2") == "angular misalignment angle 2 deg");
    CHECK(read_back("angular misalignment 2 deg") == "angular misalignment angle 2 deg");
    CHECK(read_back("toe angle 3 mm at 1") == "incorrect weld toe size 3 mm at 1 in");
    CHECK(read_back("toe angle .3x.1") == "incorrect weld toe length .3 in width .1 in");
}

TEST_CASE("a bare number behind the name of what is judged by its height or depth is that") {
    CHECK(read_back("mismatch 1/64") == "linear misalignment height 1/64 in");
    CHECK(read_back("reinforcement .06 at 2") == "excess weld metal height .06 in at 2 in");
    CHECK(read_back("mismatch s 1/64") == "linear misalignment size 1/64 in");
    CHECK(read_back("undercut .06 at 2") == "undercut depth .06 in at 2 in"); // common practice, no source
    CHECK(read_back("uc .005 l 1/4 at 2") == "undercut length 1/4 in depth .005 in at 2 in");
    CHECK(read_back("root concavity .02") == "root concavity depth .02 in");
    CHECK_THAT(why_not("mismatch 1/64 h 1/32"), says("the height is given twice"));
    CHECK_THAT(why_not("cap .03 x .25"), says("write 'w .25 h .03', 'l .25 h .03' or 'l .25 w .03'"));
    CHECK_THAT(why_not("cap .03 x .25 wide"), says("say of both numbers what they are"));
    CHECK(read_back("reinforcement .03 high x .25 wide") == "excess weld metal width .25 in height .03 in");
}

TEST_CASE("a number without a key behind other measures, and no place, is asked about") {
    CHECK(why_not("uc d .01 7") == "9: '7' could be the size or the place; write 's 7' or 'at 7'");
    CHECK(why_not("uc d .01 7 smooth # a") == "9: '7' could be the size or the place; write 's 7' or 'at 7'");
    CHECK(why_not("slag .25x.05 7").find("13: '7' could be") == 0);
    CHECK(read_back("uc d .01 .3 at 7") == "undercut depth .01 in size .3 in at 7 in");
    CHECK(read_back("uc .3 d .01") == "undercut depth .01 in size .3 in");
    CHECK(read_back("uc .3 l .3 d .01") == "undercut length .3 in depth .01 in size .3 in");
    CHECK_THAT(why_not("uc .3 d .01 d .02"), says("the depth is given twice"));
}

TEST_CASE("signs of a word processor are told as they are typed here") {
    CHECK(why_not("crack 3/8\xE2\x80\x9D at 3") == "9: '\xE2\x80\x9D' is not understood; write \" or in");
    CHECK_THAT(why_not("crack 1\xC2\xBD at 3"), says("write 1/2, as in 1-1/2"));
    CHECK(read_back("crack 3/8 at 3 # by \xE2\x80\x9Ctorch\xE2\x80\x9D") ==
          "crack size 3/8 in at 3 in # by \xE2\x80\x9Ctorch\xE2\x80\x9D");
}

TEST_CASE("what is printed can be read again and is the same") {
    for (const char *line :
         {"pore 0.045 @ 3.2", "slag .25x.05 @ 4-1/8", "undercut l 3/8 d 0.010 at 1-1/2 face smooth",
          "lack of fusion from 2 to 2.4 # side wall", "pore 0.1 at 2 across left 0.2"}) {
        const IndicationRecord once = parse_log_line(line, straight, Unit::inch);
        CHECK(parse_log_line(print_log_line(once), straight, Unit::inch) == once);
        CHECK(codec::indication_from(codec::json_of(once), straight, Unit::inch) == once);
    }
}

TEST_CASE("facts follow from what was written") {
    const Vocabulary &v = Vocabulary::shipped();
    const auto facts = [&](const std::string &line, const WeldLine &weld = straight) {
        return parse_log_line(line, weld, Unit::inch).facts(Exam::RT, weld, v);
    };
    const Indication pore = facts("pore 0.1 at 2");
    CHECK(pore.measures[Quantity::length] == nm_per_inch / 10);
    CHECK(pore.place == Span{{2 * nm_per_inch}, {2 * nm_per_inch + nm_per_inch / 10}});
    CHECK_FALSE(pore.measures.has(Quantity::width));
    CHECK_FALSE(pore.measures.has(Quantity::depth)); // missing is not zero
    CHECK(facts("slag from 2 to 2.5").measures[Quantity::length] == nm_per_inch / 2);
    CHECK(facts("pore 0.2 mid 3").place->from.nm == 3 * nm_per_inch - nm_per_inch / 10);
    CHECK(facts("slag from 11.5 in to 0.5 in", tube).place->to.nm == nm_per_inch * 25 / 2); // over the datum
    CHECK(facts("pore 0.2 mid 0", tube).place->from.nm == 12 * nm_per_inch - nm_per_inch / 10);
    CHECK(facts("slag 0.3x0.1").measures[Quantity::size] == nm_per_inch * 3 / 10);
}

TEST_CASE("lines that cannot be taken say where and why") {
    CHECK(why_not("undrcut d 0.04")
              .find("0: 'undrcut d' does not begin with a type of imperfection; did you mean 'undercut'?") ==
          0);
    CHECK(why_not("").find("a line begins with the type") != std::string::npos);
    CHECK(why_not("0.045 pore").find("a line begins with the type") != std::string::npos);
    CHECK(why_not("pore 0.045 at 30").find("14: '30' is off the weld") == 0);
    CHECK(why_not("pore 0.045 at").find("11: 'at' lacks its value") == 0);
    CHECK(why_not("pore 1,5").find("has a comma") != std::string::npos);
    CHECK(why_not("pore 0.5mmm").find("not understood") != std::string::npos);
    CHECK(why_not("pore 0.1 0.2").find("9: the size is given twice") == 0);
    CHECK(why_not("pore 0.1 at 1 at 2").find("the place is given twice") != std::string::npos);
    CHECK(why_not("pore 0.1 at 1 mid 2").find("given twice") != std::string::npos);
    CHECK(why_not("pore 0.1 frob").find("9: 'frob' is not understood") == 0);
    CHECK(why_not("pore -0.1").find("'-0.1' is not understood") != std::string::npos);
    CHECK(why_not("pore nan").find("not understood") != std::string::npos);
    CHECK(why_not("pore size nan").find("does not begin with a number") != std::string::npos);
    CHECK(why_not("slag l 0.1 w 0.2").find("is more than the length") != std::string::npos);
    CHECK(why_not("slag s 0.1 l 0.2").find("the size is the largest dimension") != std::string::npos);
    CHECK(why_not("slag from 3 to 2").find("before it begins") != std::string::npos);
    CHECK(why_not("slag from 2 3").find("'from' needs 'to'") != std::string::npos);
    CHECK(why_not("slag l 0.2 from 2 to 3").find("is not the way from") != std::string::npos);
    CHECK(why_not("slag l 0.5 at 7.8").find("off the weld") != std::string::npos);
    CHECK(why_not("pore 0.1 smooth sharp").find("both 'smooth' and 'sharp'") != std::string::npos);
    CHECK(why_not("pore 0.1 # bell\x07").find("control character") != std::string::npos);
    CHECK(why_not("pore \xff").find("not UTF-8") != std::string::npos);
    CHECK(why_not("pore " + std::string(3000, '1')).find("longer than 2000 bytes") != std::string::npos);
    for (const auto &[wrong, meant] :
         {std::pair("lenght", "length"), {"depht", "depth"}, {"smoth", "smooth"}, {"fase", "face"}})
        CHECK(why_not("pore 0.1 " + std::string(wrong) + " 0.2")
                  .ends_with("; did you mean '" + std::string(meant) + "'?"));
    CHECK(why_not("undercut l=3/8 at 1")
              .find("9: 'l=3/8': a key stands before its number with a blank; write 'l "
                    "3/8'") == 0);
    CHECK(why_not("undercut length: 3/8").ends_with("write 'length 3/8'"));
    CHECK(why_not("UT crack .2") == "0: 'UT' is no exam; expected VT, MT, PT or RT");
    // A word that several types share, or begin with, is asked about.
    for (const char *word : {"un", "u", "co", "misalignment"}) {
        INFO(word);
        CHECK(why_not(std::string(word) + " 0.04").find(" or ") != std::string::npos);
        CHECK(why_not(std::string(word) + " 0.04").ends_with("; write which"));
    }
    CHECK(why_not("misalignment h 0.04") ==
          "0: 'misalignment' could be linear misalignment or angular misalignment; write which");
    CHECK(why_not("drop-through .02 at 3") ==
          "0: 'drop-through' could be excess penetration or sagging; write which");
    CHECK(why_not("sugaring at 3") == "0: 'sugaring' could be root porosity or temper colour; write which");
    for (const char *place : {"3.30", "12.00", "6.45", "3.5", "11.50"}) {
        INFO(place);
        CHECK(why_not("pore 0.1 at " + std::string(place), tube).find("on a weld that closes on itself") !=
              std::string::npos);
    }
    CHECK(why_not("pore 0.1 at 3.30", tube).ends_with("write '3.30 in' or '3:30'"));
    CHECK(read_back("pore 0.1 at 3.27", tube) == "gas pore size 0.1 in at 3.27 in");
    CHECK(why_not("pore 0.1 at 3.5", tube).ends_with("write '3.5 in' or '3:30'"));
    CHECK(read_back("pore 0.1 at 3.25", tube) == "gas pore size 0.1 in at 3.25 in");
    CHECK(read_back("pore 0.1 at 3.5") == "gas pore size 0.1 in at 3.5 in");
    CHECK(read_back("pore 0.1 at 3.30") == "gas pore size 0.1 in at 3.30 in"); // a straight weld has no hours
    CHECK(why_not("pore 288888").find("far too large") != std::string::npos);  // its area could not be held
    CHECK(why_not("pore 99999999999999999999").find("too many digits") != std::string::npos);
}

TEST_CASE("nothing that stands at a number is dropped") {
    for (const char *line : {"pore ,1", "pore 0.1 at ,2", "pore , 1", "pore , , 0.1", "pore 0.1,,2",
                             "slag l 0.5 w,05", "slag l,1", "slag l , 1", "pore 0.1 x ,2",
                             "slag from ,2 to 3", "slag from 2 to ,3", "pore 0.1 at 2,.5", "pore ,-1"}) {
        INFO(line);
        CHECK(why_not(line).find("a comma parts what a line says, and is no decimal point") !=
              std::string::npos);
    }
    for (const char *line : {"pore 1..2", "pore .5.", "pore 1'2", "pore 0.1\"0.2", "pore at 1'2", "pore +0.1",
                             "pore 1/8/2", "pore 0.1\xC2\xB2", "pore \xEF\xBC\x90.1", "pore \xD9\xA1",
                             "pore 1\xC2\xBD", "pore 0.1e3", "pore 0.1;0.2", "pore at 2in.3"}) {
        INFO(line);
        CHECK_FALSE(why_not(line).empty());
    }
    // A comma behind what it ends.
    CHECK(read_back("gas pore 0.1, at 2, face") == "gas pore size 0.1 in at 2 in face");
    CHECK(read_back("pore 0.1,at 2,") == "gas pore size 0.1 in at 2 in");
}

TEST_CASE("random bytes are refused or read, never worse") {
    std::mt19937 random(5);
    const std::string alphabet =
        "pore slag undercut at from to mid @#x 0123456789./-:'\"deg mm in\xC2\xB0\xff\x01";
    for (int n = 0; n < 20'000; ++n) {
        std::string line;
        for (auto size = random() % 40; size > 0; --size) line += alphabet[random() % alphabet.size()];
        if (n % 2 == 0) line = "pore " + line;
        try {
            const IndicationRecord i = parse_log_line(line, tube, Unit::inch);
            CHECK(parse_log_line(print_log_line(i), tube, Unit::inch) == i);
        } catch (const InputError &e) {
            REQUIRE(e.column <= line.size());
        } catch (const DataError &) {
        }
    }
}

TEST_CASE("a size whose name says it is not said twice, and is read back") {
    const WeldLine weld{Length{8 * nm_per_inch}, false};
    const auto once = parse_log_line("fillet size 1/4 at 1", weld, Unit::inch);
    CHECK(print_log_line(once) == "fillet size 1/4 in at 1 in");
    CHECK(parse_log_line(print_log_line(once), weld, std::nullopt) == once);
    CHECK(print_log_line(parse_log_line("gas pore 0.05 at 1", weld, Unit::inch)) ==
          "gas pore size 0.05 in at 1 in");
}

TEST_CASE("the mark that some editors put in front of a file is taken off") {
    CHECK(without_mark("\xEF\xBB\xBFpore") == "pore");
    CHECK(without_mark("pore") == "pore");
}

TEST_CASE(
    "a type may be cut short where only one begins so, and what is unclear is refused with all it can mean") {
    const WeldLine weld{Length{8 * nm_per_inch}, true};
    const auto read = [&](const char *line) { return read_log_line(line, weld, Unit::inch); };
    const Vocabulary &v = Vocabulary::shipped();
    const LogLine short_one = read("cra l.2 d.010 7:00");
    CHECK(short_one.guessed == "cra");
    CHECK(v[short_one.found.type].name == "crack");
    CHECK(short_one.found.measures.at(Quantity::length).text == ".2 in");
    CHECK(short_one.found.measures.at(Quantity::depth).text == ".010 in");
    CHECK(short_one.found.at->text == "7:00");
    CHECK(read("crack 0.2").guessed.empty());
    CHECK(v[read("high-low h 0.02").found.type].name == "linear misalignment");
    CHECK(v[read("melt-through h 0.02").found.type].name == "excess penetration"); // no burn-through
    for (const auto &[line, all] : {std::pair{"und 0.2", "undercut or incompletely filled groove"},
                                    std::pair{"cold lap .2", "incomplete fusion or overlap"},
                                    std::pair{"crown .2", "excess weld metal or excessive convexity"},
                                    std::pair{"low .2", "linear misalignment or incompletely filled groove"},
                                    std::pair{"non .2", "incomplete fusion or rounded indication"},
                                    std::pair{"concavity .2", "root concavity"},
                                    std::pair{"crater .2", "crater crack or crater pipe"}}) {
        INFO(line);
        CHECK_THROWS_WITH(read(line), Catch::Contains("could be ") && Catch::Contains(all));
    }
    // Two letters are too few to be taken for one, and are asked about.
    for (const char *line : {"cr.2", "un 0.2"})
        CHECK_THROWS_WITH(read(line), Catch::Contains("; write which"));
    CHECK_THROWS_WITH(parse_log_line("cra 0.2", weld, Unit::inch), Catch::Contains("cut short; write crack"));
}

TEST_CASE("units in capitals, and units at the x between two sizes, are understood") {
    CHECK(read_back("gas pore 5MM at 2") == "gas pore size 5MM at 2 in");
    CHECK(read_back("gas pore 0.2IN at 2 IN") == "gas pore size 0.2IN at 2 IN");
    CHECK(read_back("slag 5mmx1mm at 2") == "slag inclusion length 5mm width 1mm at 2 in");
    CHECK(read_back("slag 0.1inx0.2in at 2") == "slag inclusion length 0.2in width 0.1in at 2 in");
    CHECK_THAT(why_not("slag 5mmx at 2"), says("5mmx"));
}

TEST_CASE("a word in front of a type is told where it belongs") {
    CHECK_THAT(why_not("root crack 0.1 at 1"), says("the type comes first"));
    CHECK_THAT(why_not("root crack 0.1 at 1"), says("write 'crack 0.1 at 1 root'"));
    CHECK_THAT(why_not("toe crack 0.1 at 1"), says("write 'crack 0.1 at 1 # toe'"));
    CHECK_THAT(why_not("ugly gas pore 0.1 at 1"), says("write 'gas pore 0.1 at 1 # ugly'"));
    CHECK_THAT(why_not("cra root 0.1 # crack"), says("write crack")); // a remark says what it likes
    CHECK(read_back("high low 0.02 at 1") == read_back("high-low 0.02 at 1"));
}

TEST_CASE("no is no find, whatever type it could begin") {
    CHECK_THAT(why_not("no at 3"), says("'no at' is no find"));
    CHECK_THAT(why_not("no"), says("is no find"));
    CHECK_THAT(why_not("no crack at 3"), says("is no find"));
}

TEST_CASE("two numbers of a type that is measured by its depth or height are asked about") {
    CHECK(why_not("undercut 3/8 x 1/32 at 1.5 in") ==
          "9: '3/8 x 1/32' of undercut could be length x depth or length x width; write 'l 3/8 d 1/32' or 'l "
          "3/8 w 1/32'");
    CHECK_THAT(why_not("undercut 1/32x3/8"), says("write 'l 3/8 d 1/32' or 'l 3/8 w 1/32'"));
    CHECK_THAT(why_not("shrinkage groove 3/8 in x 1/32 in"), says("write 'l 3/8 in d 1/32 in'"));
    CHECK_THAT(why_not("root concavity .5 x .01"), says("length x depth or length x width"));
    CHECK_THAT(why_not("hi-lo .5 x .01"), says("length x height or length x width"));
    CHECK(read_back("undercut l 3/8 w 1/32") == "undercut length 3/8 in width 1/32 in");
    CHECK(read_back("slag 3/8 x 1/32") == "slag inclusion length 3/8 in width 1/32 in");
}

TEST_CASE("what a number is called may stand behind it") {
    CHECK(read_back("crack 3/8 long 1/32 deep at 2") == "crack length 3/8 in depth 1/32 in at 2 in");
    CHECK(read_back("slag .02 wide, 3/8 LONG, at 5") == "slag inclusion length 3/8 in width .02 in at 5 in");
    // A key that ends a name is a key where its number follows, and a part of the name where none does.
    CHECK(read_back("cap height 0.03 at 1") == "excess weld metal height 0.03 in at 1 in");
    CHECK(read_back("cap height h 0.03 at 1") == "excess weld metal height 0.03 in at 1 in");
    for (const char *line : {"cap h 0.03 at 1", "crown h .03 at 1", "cap h .03"})
        CHECK(read_log_line(line, straight, Unit::inch).found.measures.contains(Quantity::height));
    CHECK(read_back("excess penetration 1/16 high") == "excess penetration height 1/16 in");
    CHECK(read_back("undercut 3/8 long x 1/32 deep") == "undercut length 3/8 in depth 1/32 in");
    CHECK(read_back("undercut 3/8 x 1/32 deep") == "undercut length 3/8 in depth 1/32 in");
    CHECK_THAT(why_not("undercut 3/8 long x 1/32"), says("20: '1/32'") && says("what they are"));
    CHECK_THAT(why_not("slag 1/32 x 3/8 long"), says("5: '1/32'") && says("what they are"));
    CHECK_THAT(why_not("crack 3/8 long .4 long"), says("the length is given twice"));
    CHECK_THAT(why_not("crack 3/8 longer"), says("'longer' is not understood"));
}

TEST_CASE(
    "an hour is a place with its word too, and a stretch needs no word in front where it can be no size") {
    CHECK(read_back("crack 1/4 6 o'clock", tube) == "crack size 1/4 in at 6 o'clock");
    CHECK(read_back("crack 1/4 6 oclock", tube) == "crack size 1/4 in at 6 o'clock");
    CHECK(read_back("crack at 6 O\xE2\x80\x99"
                    "Clock",
                    tube) == "crack at 6 o'clock");
    CHECK(read_back("crack 7:30 o'clock", tube) == "crack at 7:30");
    CHECK(read_back("crack 3:00 to 3:30", tube) == "crack from 3:00 to 3:30");
    CHECK(read_back("crack 3 o'clock to 4 oclock", tube) == "crack from 3 o'clock to 4 o'clock");
    CHECK(read_back("crack at 2 to 2.4 face") == "crack from 2 in to 2.4 in face");
    CHECK_THAT(why_not("crack 1/4 6 o'clock"), says("nobody said that this weld goes round one"));
    CHECK_THAT(why_not("crack 6 oclocks", tube), says("'oclocks' is not understood"));
    CHECK_THAT(why_not("crack 13 o'clock", tube), says("not on a clock of twelve hours"));
    CHECK_THAT(why_not("crack 2 to 2.4"), says("6: '2 to 2.4'") && says("write 'from 2 to 2.4'"));
    CHECK_THAT(why_not("crack 3:00-3:30", tube), says("from 2 to 2.4"));
}

TEST_CASE("words of the trade name their type") {
    for (const auto &[word, name] :
         {std::pair("burn thru", "burn-through"), std::pair("burn through", "burn-through"),
          std::pair("burn-thru", "burn-through"), std::pair("non fusion", "incomplete fusion"),
          std::pair("Non-fusion", "incomplete fusion"), std::pair("nonfusion", "incomplete fusion"),
          std::pair("suck back", "root concavity"), std::pair("low cap", "incompletely filled groove"),
          std::pair("low crown", "incompletely filled groove"),
          std::pair("crown height", "excess weld metal")})
        CHECK(read_back(std::string(word) + " l 0.2 at 3") == std::string(name) + " length 0.2 in at 3 in");
}

TEST_CASE("a word of a number or of a group is never proposed as a remark") {
    for (const char *said : {"four", "Two", "ten", "many", "double", "pair of", "row of", "chain of",
                             "string of", "group of", "several small", "both toes", "some"}) {
        INFO(said);
        const std::string why = why_not(std::string(said) + " ri 0.1 at 3");
        CHECK_THAT(why, says("no rule reads how many"));
        CHECK_THAT(why, says("write 'rounded indication ...' for each of them"));
        CHECK_THAT(why, !says("#"));
        CHECK_THAT(why, !says("porosity"));
    }
    CHECK_THAT(why_not("ri x3 0.1 at 3"), says("no rule reads how many"));
    CHECK_THAT(why_not("both toes undercut d 0.01 at 3"), says("write 'undercut ...' for each of them"));
    CHECK_THAT(why_not("undercut d 0.01 at 3 both toes"), says("write 'undercut ...' for each of them"));
    CHECK_THAT(why_not("aligned pore 0.1 at 3"), says("or 'linear porosity ...'"));
    CHECK_THAT(why_not("linear pores 0.1 at 3"), says("or 'linear porosity ...'"));
    CHECK_THAT(why_not("scattered pores 0.1 at 3"), says("or 'scattered porosity ...'"));
    CHECK_THAT(why_not("cluster pores 0.1 at 3"), says("clustered porosity is several already"));
    CHECK_THAT(why_not("group of pores 0.1 at 3"), says("or 'clustered porosity ...'"));
    CHECK_THAT(why_not("four pores 0.1 at 3"), says("'scattered', 'clustered' or 'linear porosity ...'"));
    CHECK_THAT(why_not("undercuts d 0.01 at 3"), says("write 'undercut ...' for each of them"));
    CHECK_THAT(why_not("gas pores 0.1 at 3"), says("'gas pores'") && says("write 'gas pore ...' for each"));
    CHECK_THAT(why_not("linear indications d 0.1 at 3"), says("write 'linear indication ...' for each"));
    CHECK_THAT(why_not("twenty-five ri 0.1 at 3"), says("no rule reads how many"));
    CHECK_THAT(why_not("ri 0.1 at 3 each toe"), says("no rule reads how many"));
    CHECK_THAT(why_not("slag inclusions 0.1 at 3"), says("write 'slag inclusion ...' for each of them"));
    CHECK_THAT(why_not("linear undercut d 0.01 at 3"), says("the type comes first"));
}

TEST_CASE("what goes all round is told how it is written") {
    for (const char *line : {"undercut d .01 all round", "undercut d .01 all around smooth",
                             "all round undercut d .01", "undercut d .01 full circumference"}) {
        INFO(line);
        CHECK_THAT(why_not(line, tube), says("what goes all round is written 'l 12 in at 12:00'"));
        CHECK_THAT(why_not(line), says("'from .. to ..'"));
    }
}
