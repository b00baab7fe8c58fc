#include "catch.hpp"
#include "measure/parse.hpp"
#include "measure/place.hpp"
#include "measure/print.hpp"
#include "measure/text.hpp"

#include <array>
#include <cstdio>
#include <cstdlib>
#include <random>

using namespace beadbook;

namespace {

std::int64_t nm(std::string_view text, std::optional<Unit> unit = std::nullopt) {
    return parse_length(text, unit).nm;
}

std::string why_not(std::string_view text, std::optional<Unit> unit = std::nullopt) {
    try {
        parse_typed(text, Dimension::length, unit);
    } catch (const InputError &e) {
        return std::to_string(e.column) + ": " + e.what();
    }
    return "taken";
}

} // namespace

TEST_CASE("a printed limit is exact, or on the side on which it holds") {
    const Exact inch(nm_per_inch);
    const auto printed = [&](const Exact &value, bool at_most) {
        return print_limit(value, Dimension::length, Unit::inch, at_most);
    };
    CHECK(printed(inch * Exact::fraction(9, 160), true) == "0.05625 in");
    CHECK(printed(inch * Exact::fraction(1, 6), true) == "0.1666 in");
    CHECK(printed(inch * Exact::fraction(1, 6), false) == "0.1667 in");
    CHECK(printed(inch * Exact::fraction(1, 3), true) == "0.3333 in");
    CHECK(printed(inch * Exact::fraction(1, 3), false) == "0.3334 in");
    // What was written down in the other unit.
    CHECK(print_unrounded(Exact(1'500'000), Dimension::length, Unit::inch) == "1.5 mm");
    CHECK(print_unrounded(inch * Exact::fraction(1, 16), Dimension::length, Unit::millimetre) == "1.5875 mm");
}

TEST_CASE("a fraction is kept exactly and compared exactly") {
    CHECK(Exact::fraction(1, 3) + Exact::fraction(1, 6) == Exact::fraction(1, 2));
    CHECK(Exact::fraction(2, -4) == Exact::fraction(-1, 2));
    CHECK(Exact::fraction(1, 3) * Exact(3) == Exact(1));
    CHECK(Exact::fraction(1, 3) < Exact::fraction(333'333'334, 1'000'000'000));
    CHECK(Exact(7) / Exact(2) == Exact::fraction(7, 2));
    CHECK(Exact::fraction(5, 2).rounded() == 3);
    CHECK(Exact::fraction(-5, 2).rounded() == -3);
    for (const auto &[twice, even] : std::vector<std::pair<int, int>>{
             {1, 0}, {3, 2}, {5, 2}, {7, 4}, {-1, 0}, {-3, -2}, {-5, -2}, {-7, -4}, {4, 2}, {-4, -2}, {0, 0}})
        CHECK(Exact::fraction(twice, 2).rounded_to_even() == even);
    CHECK(Exact::fraction(2'499, 1'000).rounded_to_even() == 2);
    CHECK(Exact::fraction(2'501, 1'000).rounded_to_even() == 3);
    CHECK(Exact::fraction(-2'501, 1'000).rounded_to_even() == -3);
    CHECK_THROWS_AS(Exact(1) / Exact(0), std::domain_error);
    const Exact large = Exact::whole(static_cast<Int128>(1) << 100);
    CHECK_THROWS_AS(large * large, OutOfRange);
}

TEST_CASE("the case that doubles get wrong: 0.1 x 3 at most 0.3, and 0.600/3 at most 0.200") {
    CHECK(Exact::fraction(1, 10) * Exact(3) <= Exact::fraction(3, 10));
    CHECK(Exact(nm("0.600 in")) / Exact(3) <= Exact(nm("0.200 in")));
}

TEST_CASE("lengths as the trade writes them") {
    CHECK(nm("0.045", Unit::inch) == 1'143'000);
    CHECK(nm(".045 in") == 1'143'000);
    CHECK(nm("45 thou") == 1'143'000);
    CHECK(nm("45 mil") == 1'143'000);
    CHECK(nm("3/16", Unit::inch) == 4'762'500);
    CHECK(nm("1-1/2 in") == 38'100'000);
    CHECK(nm("2 3/4\"") == 69'850'000);
    CHECK(nm("1.2 mm") == 1'200'000);
    CHECK(nm("1.2mm", Unit::inch) == 1'200'000);
    CHECK(nm("  12 mm  ") == 12'000'000);
    CHECK(nm("0.5 cm") == 5'000'000);
    CHECK(nm("1 ft") == 304'800'000);
    CHECK(nm("1/64 in") == 396'875);
    CHECK(nm("120 um") == 120'000);
    CHECK(nm("120 µm") == 120'000);
    CHECK(nm("3", Unit::millimetre) == 3'000'000);
}

TEST_CASE("a typed length keeps its words and says its unit") {
    CHECK(parse_typed("3/16", Dimension::length, Unit::inch).text == "3/16 in");
    CHECK(parse_typed("1.2 mm", Dimension::length, Unit::inch).text == "1.2 mm");
    CHECK(parse_typed("105", Dimension::angle, Unit::inch).text == "105 deg");
}

TEST_CASE("other dimensions") {
    CHECK(parse_typed("0.004 in2", Dimension::area, {}).value ==
          Exact(4) * Exact(nm_per_inch) * Exact(nm_per_inch) / Exact(1000));
    CHECK(parse_typed("2.5", Dimension::area, Unit::millimetre).value == Exact(2'500'000'000'000));
    CHECK(parse_typed("40 %", Dimension::number, {}).value == Exact::fraction(2, 5));
    CHECK(parse_typed("350 F", Dimension::temperature, {}).value ==
          parse_typed("176.66666 C", Dimension::temperature, {}).value + Exact(12));
    CHECK(parse_typed("-40 C", Dimension::temperature, {}).value ==
          parse_typed("-40 F", Dimension::temperature, {}).value);
}

TEST_CASE("what is no length is refused, with the column and what was expected") {
    CHECK(why_not("", Unit::inch) ==
          "0: nothing given; expected a length such as 0.045 in, 3/16 in, 1-1/2 in or 1.2 mm");
    CHECK(why_not("0.045") ==
          "5: '0.045' has no unit; expected a length such as 0.045 in, 3/16 in, 1-1/2 in or 1.2 mm");
    CHECK(why_not("1,5", Unit::inch) == "1: '1,5' has a comma; write a decimal point");
    CHECK(why_not("-1 in").find("is negative") != std::string::npos);
    CHECK(why_not("1/0 in").find("cannot have 0 below the line") != std::string::npos);
    CHECK(why_not("1-5/4 in").find("is 1 or more") != std::string::npos);
    CHECK(why_not("3/16/2 in").find("'/2 in' in '3/16/2 in' is not understood") != std::string::npos);
    CHECK(why_not("12 inn", Unit::inch).find("'inn' in '12 inn' is not understood") == std::string::npos);
    CHECK(why_not("12 inn", Unit::inch).find("is not understood") != std::string::npos);
    CHECK(why_not("5 deg").find("is an angle") != std::string::npos);
    CHECK(why_not("nan", Unit::inch).find("does not begin with a number") != std::string::npos);
    CHECK(why_not("inf", Unit::inch).find("does not begin with a number") != std::string::npos);
    CHECK(why_not("1e400", Unit::inch).find("not understood") != std::string::npos);
    CHECK(why_not("1 in 2 in").find("not understood") != std::string::npos);
    CHECK(why_not("99999999999999999999 in").find("too many digits") != std::string::npos);
    CHECK(why_not("11 km").find("not understood") != std::string::npos);
    CHECK(why_not("999999999 m").find("far too large") != std::string::npos);
    CHECK(nm("400 m") == longest_length.nm);
    CHECK(why_not("400000.000001 mm").find("far too large") != std::string::npos);
    CHECK(why_not("0.0000000001 in").find("finer than can be kept exactly") != std::string::npos);
    CHECK(why_not("1/3 in").find("finer than can be kept exactly") != std::string::npos);
    CHECK(why_not("\xff\xfe", Unit::inch)
              .find("'?"
                    "?'") != std::string::npos);
}

TEST_CASE("printing rounds for reading and never hides a difference") {
    CHECK(print(nm("0.05625 in"), Dimension::length, Unit::inch) == "0.0563 in");
    CHECK(print(nm("3/16 in"), Dimension::length, Unit::inch) == "0.1875 in");
    CHECK(print(nm("3/16 in"), Dimension::length, Unit::millimetre) == "4.763 mm");
    CHECK(print(Exact(0), Dimension::length, Unit::inch) == "0 in");
    const PrintedPair p =
        print_pair(Exact(nm("0.05 in")) + Exact(1), Exact(nm("0.05 in")), Dimension::length, Unit::inch);
    CHECK(p.first != p.second);
    CHECK(p.second == "0.05 in");
    CHECK(p.difference != "0 in");
}

TEST_CASE("a length that was typed is printed back as the same number in its unit") {
    std::mt19937 random(1);
    for (int n = 0; n < 2000; ++n) {
        const int tenths = static_cast<int>(random() % 100'000);
        const std::string typed =
            print(Exact(tenths) * Exact(nm_per_inch) / Exact(10'000), Dimension::length, Unit::inch);
        CHECK(print(parse_typed(typed, Dimension::length, {}).value, Dimension::length, Unit::inch) == typed);
    }
}

TEST_CASE("GNU units agrees with our units") {
    if (std::system("command -v units >/dev/null 2>&1") != 0) {
        WARN("GNU units is not installed; the reference comparison was left out");
        return;
    }
    // Ours, and the same for units(1), whose spelling differs.
    const std::array<std::array<const char *, 2>, 12> pairs{{{"0.045 in", "0.045 inch"},
                                                             {"3/16 in", "(3|16) inch"},
                                                             {"1-1/2 in", "(1+1|2) inch"},
                                                             {"2 3/4 in", "(2+3|4) inch"},
                                                             {"1.2 mm", "1.2 mm"},
                                                             {"45 thou", "45 mil"},
                                                             {"45 mil", "45 mil"},
                                                             {"7 cm", "7 cm"},
                                                             {"3 ft", "3 ft"},
                                                             {"0.5 m", "0.5 m"},
                                                             {"120 um", "120 um"},
                                                             {"1/64 in", "(1|64) inch"}}};
    for (const auto &[ours, theirs] : pairs) {
        const std::string command = std::string("units -t -o %.15g '") + theirs + "' nm";
        FILE *pipe = popen(command.c_str(), "r");
        double value = 0;
        const int read = std::fscanf(pipe, "%lf", &value);
        pclose(pipe);
        INFO(ours);
        REQUIRE(read == 1);
        CHECK(static_cast<double>(nm(ours)) == Approx(value).epsilon(1e-12));
    }
}

TEST_CASE("places along a weld, by distance, clock and angle") {
    const WeldLine straight{Length{nm("8 in")}, false};
    const WeldLine tube{Length{nm("12 in")}, true};
    const auto at = [](std::string_view text, const WeldLine &weld) {
        return parse_place(text, weld, Unit::inch).value;
    };
    CHECK(at("3.2", straight) == Exact(nm("3.2 in")));
    CHECK(at("8", straight) == Exact(nm("8 in")));
    CHECK(at("3:00", tube) == Exact(nm("3 in")));
    CHECK(at("12:00", tube) == Exact(0));
    CHECK(at("0:30", tube) == Exact(nm("0.5 in")));
    CHECK(at("11:59", tube) == Exact::whole((Exact(nm("12 in")) * Exact(719) / Exact(720)).rounded()));
    CHECK(at("4 o'clock", tube) == Exact(nm("4 in")));
    CHECK(at("90 deg", tube) == Exact(nm("3 in")));
    CHECK(at("90°", tube) == Exact(nm("3 in")));
    CHECK(at("1-1/2", tube) == Exact(nm("1.5 in")));
}

TEST_CASE("places that cannot be are refused") {
    const WeldLine straight{Length{nm("8 in")}, false};
    const WeldLine tube{Length{nm("12 in")}, true};
    const WeldLine unknown{std::nullopt, true};
    CHECK_THROWS_WITH(parse_place("8.001", straight, Unit::inch), says("off the weld, which is 8 in long"));
    CHECK_THROWS_WITH(parse_place("250 mm", straight, Unit::inch),
                      says("is off the weld, which is 203.2 mm long"));
    CHECK_THROWS_WITH(parse_place("3:30", straight, Unit::inch),
                      says("nobody said that this weld goes round one"));
    CHECK_THROWS_WITH(parse_place("3:30", unknown, Unit::inch), says("needs the tube's outside diameter"));
    CHECK_THROWS_WITH(parse_place("3:60", tube, Unit::inch), says("not a clock position"));
    CHECK_THROWS_WITH(parse_place("13:00", tube, Unit::inch), says("clock of twelve hours"));
    CHECK_THROWS_WITH(parse_place("360 deg", tube, Unit::inch), says("a full turn"));
    CHECK_THROWS_WITH(parse_place("-1", tube, Unit::inch), says("negative"));
}

TEST_CASE("the girth of a tube") {
    // technique sheet, section 4, derived: NPS 4, OD 4.5 in, girth 14.137 in; NPS 12, OD 12.75, 40.055 in.
    CHECK(static_cast<double>(circumference({nm("4.5 in")}).nm) / 25.4e6 == Approx(14.137).epsilon(1e-4));
    CHECK(static_cast<double>(circumference({nm("12.75 in")}).nm) / 25.4e6 == Approx(40.055).epsilon(1e-4));
    CHECK(circumference({1'000'000'000}).nm == 3'141'592'654);
}

TEST_CASE("words") {
    CHECK(nearest_word("undrcut", {"undercut", "overlap"}) == "undercut");
    CHECK(nearest_word("xyzzy", {"undercut", "overlap"}).empty());
    // Never the opposite.
    CHECK(nearest_word("with", {"without", "backgouge", "backing"}).empty());
    CHECK(nearest_word("wit", {"without", "backing"}).empty());
    CHECK(nearest_word("witout", {"without", "backing"}) == "without");
    CHECK(nearest_word("wth", {"with", "without"}) == "with");
    CHECK(nearest_word("magnetik", {"non-magnetic"}).empty());
    CHECK(nearest_word("nonmagnetik", {"magnetic", "non-magnetic"}) == "non-magnetic");
    CHECK(nearest_word("not known", {"known"}).empty());
    CHECK(nearest_word("clusion", {"inclusion"}).empty());
    CHECK(nearest_word("inclusoin", {"inclusion"}) == "inclusion");
    CHECK(listed({"a", "b", "c"}) == "a, b and c");
    CHECK(shown(std::string("a\x01\xC3") + "b") == "a?"
                                                   "?b");
    CHECK(shown(std::string(200, 'x')).size() == 63);
    CHECK(valid_utf8("µ°²"));
    for (const char *broken : {"\xC0\x80", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\xE2\x82", "\x80"})
        CHECK_FALSE(valid_utf8(broken));
}
