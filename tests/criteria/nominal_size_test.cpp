// Sizes that the trade calls by a number. The values are from memory: ASME B36.10M (outside diameters,
// schedules), ASME B36.19M (with an S), the manufacturers' standard gauge for steel sheet, the US standard
// gauge for stainless sheet, Brown and Sharpe for aluminium, Birmingham for tubes.
#include "criteria/nominal_size.hpp"

#include "catch.hpp"
#include "criteria/shipped.hpp"
#include "measure/parse.hpp"

using namespace beadbook;

namespace {

const NominalSizes &sizes() { return NominalSizes::shipped(); }

std::string outside(const std::string &text) {
    const auto found = sizes().outside(text);
    return found ? found->text() : "nothing";
}
std::string wall(const std::string &text, const BesideWall &beside = {}) {
    const auto found = sizes().wall(text, beside);
    return found ? found->text() : "nothing";
}
BesideWall of(const std::string &diameter) {
    return {parse_typed(diameter, Dimension::length, {}).value, "", true};
}
template <class F>
std::string refusal(F f) {
    try {
        f();
    } catch (const InputError &e) {
        return e.what();
    }
    return "";
}

} // namespace

TEST_CASE("an NPS is an outside diameter, however it is written") {
    for (const char *text : {"NPS 2", "nps 2", "NPS2", "2 NPS", " NPS  2 "})
        CHECK(outside(text) == "2.375 in (NPS 2)");
    CHECK(outside("NPS 1/2") == "0.840 in (NPS 1/2)");
    for (const char *text : {"NPS 1-1/2", "NPS 1 1/2", "NPS 1.5"})
        CHECK(outside(text) == "1.900 in (NPS 1-1/2)");
    CHECK(outside("NPS 6") == "6.625 in (NPS 6)");
    CHECK(outside("NPS 12") == "12.750 in (NPS 12)");
    CHECK(outside("NPS 14") == "14.000 in (NPS 14)"); // from here on it is its number
    for (const char *text : {"2 in", "2.375 in", "2", "", "sch 40"}) CHECK(outside(text) == "nothing");
}

TEST_CASE("an NPS that the table does not have is refused, never worked out") {
    CHECK_THAT(refusal([] { outside("NPS 7"); }),
               says("'NPS 7' is no pipe of the table, which has NPS 1/8, 1/4, "));
    CHECK_THAT(refusal([] { outside("NPS two"); }), says("is no pipe of the table"));
    CHECK_THAT(refusal([] { outside("NPS 2 sch 40"); }), says("give that as the thickness, such as sch 40"));
}

TEST_CASE("a schedule is the wall of one pipe") {
    for (const char *text : {"sch 40", "Sch. 40", "schedule 40", "SCH40"})
        CHECK(wall(text, of("2.375 in")) == "0.154 in (NPS 2 sch 40)");
    CHECK(wall("sch 80", of("2.375 in")) == "0.218 in (NPS 2 sch 80)");
    CHECK(wall("sch 160", of("2.375 in")) == "0.344 in (NPS 2 sch 160)");
    CHECK(wall("XXS", of("2.375 in")) == "0.436 in (NPS 2 XXS)");
    CHECK(wall("sch 10S", of("2.375 in")) == "0.109 in (NPS 2 sch 10S)");
    CHECK(wall("sch 10s", of("6.625 in")) == "0.134 in (NPS 6 sch 10S)");
    // Of carbon steel, through NPS 6 as thick as 10S.
    for (const auto &[pipe, size] : std::vector<std::pair<std::string, std::string>>{{"1/2", "0.083"},
                                                                                     {"3/4", "0.083"},
                                                                                     {"1", "0.109"},
                                                                                     {"1-1/4", "0.109"},
                                                                                     {"1-1/2", "0.109"},
                                                                                     {"2", "0.109"},
                                                                                     {"2-1/2", "0.120"},
                                                                                     {"3", "0.120"},
                                                                                     {"4", "0.120"},
                                                                                     {"5", "0.134"},
                                                                                     {"6", "0.134"}})
        CHECK(wall("NPS " + pipe + " sch 10") == size + " in (NPS " + pipe + " sch 10)");
    CHECK(wall("NPS 6 sch 40") == "0.280 in (NPS 6 sch 40)");
    CHECK(wall("NPS 1-1/2 sch 80") == "0.200 in (NPS 1-1/2 sch 80)");
    // Standard is schedule 40 up to NPS 10, extra strong is 80 up to NPS 8.
    CHECK(wall("std", of("10.75 in")) == "0.365 in (NPS 10 STD)");
    CHECK(wall("std", of("12.75 in")) == "0.375 in (NPS 12 STD)");
    CHECK(wall("sch 40", of("12.75 in")) == "0.406 in (NPS 12 sch 40)");
    CHECK(wall("XS", of("8.625 in")) == wall("NPS 8 XS"));
    CHECK(wall("XS", of("10.75 in")) == "0.500 in (NPS 10 XS)");
    CHECK(wall("0.154 in", of("2.375 in")) == "nothing");
}

TEST_CASE("a schedule of no known pipe is refused with what to give") {
    CHECK_THAT(refusal([] { wall("sch 40"); }), says("of which pipe? give the diameter too"));
    CHECK_THAT(refusal([] { wall("sch 40", of("2 in")); }), says("the diameter is that of no pipe"));
    CHECK_THAT(refusal([] { wall("NPS 3 sch 40", of("2.375 in")); }), says("is the wall of another pipe"));
    CHECK_THAT(refusal([] { wall("sch 45", of("2.375 in")); }),
               says("no such wall of NPS 2; it has 5S, 10, 10S, 40, 40S, STD, 80, 80S, XS, 160 and XXS"));
    // Tables of the trade differ: 0.148 in and 0.188 in.
    CHECK_THAT(refusal([] { wall("sch 10", of("8.625 in")); }),
               says("no such wall of NPS 8; it has 5S, 10S, 20, 30, 40, "));
}

TEST_CASE("one gauge is another thickness of each metal, so that it is said, or follows from the metal") {
    CHECK(wall("16 ga steel") == "0.0598 in (16 ga steel)");
    CHECK(wall("16 gauge stainless") == "0.0625 in (16 ga stainless)");
    CHECK(wall("16ga aluminum") == "0.0508 in (16 ga aluminium)");
    CHECK(wall("16 ga galvanised") == "0.0635 in (16 ga galvanized)");
    CHECK(wall("BWG 16") == "0.065 in (16 ga BWG)");
    CHECK(wall("11 ga steel") == "0.1196 in (11 ga steel)");
    CHECK(wall("16 ga", {{}, "304 stainless steel", false}) == "0.0625 in (16 ga stainless)");
    CHECK(wall("16 ga", {{}, "Carbon steel", false}) == "0.0598 in (16 ga steel)");
    CHECK(wall("16 ga", {{}, "6061 aluminium", false}) == "0.0508 in (16 ga aluminium)");
}

TEST_CASE("a gauge that can mean several is refused with all of them") {
    const std::string all =
        "16 ga steel is 0.0598 in, 16 ga galvanized is 0.0635 in, 16 ga stainless is 0.0625 in, "
        "16 ga aluminium is 0.0508 in or 16 ga BWG is 0.065 in; write which";
    CHECK_THAT(refusal([] { wall("16 ga"); }), says(all));
    CHECK_THAT(refusal([] { wall("16 ga", {{}, "S355", false}); }), says(all)); // which sheet is not guessed
    CHECK_THAT(refusal([] { wall("16 ga", {{}, "steel", false}); }), says(all));
    // The wall of a tube: by Birmingham, or rolled from sheet.
    CHECK_THAT(refusal([] { wall("16 ga", {{}, "stainless steel", true}); }), says(all));
    CHECK(wall("16 ga stainless", {{}, "stainless steel", true}) == "0.0625 in (16 ga stainless)");
    CHECK_THAT(refusal([] { wall("16 ga titanium"); }), says("of no table of gauges that is known: "));
    CHECK_THAT(refusal([] { wall("6 ga stainless"); }),
               says("not in the table of stainless: 6 ga steel is 0.1943 in or 6 ga aluminium is 0.1620 in"));
    CHECK_THAT(refusal([] { wall("99 ga"); }), says("a gauge that no table has"));
}

TEST_CASE("what is kept says its size and its name, and the two must agree") {
    CHECK(outside("2.375 in (NPS 2)") == "2.375 in (NPS 2)");
    CHECK(wall("0.154 in (NPS 2 sch 40)", of("2.375 in")) == "0.154 in (NPS 2 sch 40)");
    CHECK(wall("0.065 in (16 ga BWG)") == "0.065 in (16 ga BWG)");
    CHECK_THAT(refusal([] { outside("2 in (NPS 2)"); }), says("'2 in' is not NPS 2, which is 2.375 in"));
    CHECK_THAT(refusal([] { wall("0.1 in (measured)"); }), says("is no size that is known by a number"));
    CHECK_THAT(refusal([] { wall("0.154 in (NPS 2 sch 40)", of("3.5 in")); }), says("another pipe"));
}

TEST_CASE("every size of the tables is thinner than half of its pipe, and schedules get thicker") {
    Issues issues;
    NominalSizes::read(shipped_file("nominal-sizes.yaml"), issues);
    CHECK_FALSE(issues.any_error());
    for (const char *nps : {"1/8", "1/4", "3/8", "1/2", "3/4", "1", "1-1/4", "1-1/2", "2", "2-1/2", "3",
                            "3-1/2", "4", "5", "6", "8", "10", "12"}) {
        const auto pipe = sizes().outside("NPS " + std::string(nps));
        REQUIRE(pipe);
        const Exact out = parse_typed(pipe->size, Dimension::length, {}).value;
        Exact thinner = 0;
        for (const char *schedule : {"10S", "40", "80"}) {
            const auto one = sizes().wall("sch " + std::string(schedule), {out, "", true});
            REQUIRE(one);
            const Exact value = parse_typed(one->size, Dimension::length, {}).value;
            CHECK(value > thinner);
            CHECK(value + value < out);
            thinner = value;
        }
    }
}

TEST_CASE("a file of sizes tells its mistakes") {
    const auto first = [](const std::string &text) {
        Issues issues;
        NominalSizes::read(text, issues);
        return issues.any_error() ? issues.all().front().text : std::string();
    };
    const std::string head = "pipes: {standing: {house: x}, sizes: [{nps: 2, outside: ";
    CHECK(first(head + "2.375}]}") == "");
    CHECK_THAT(first(head + "wide}]}"), says("does not begin with a number"));
    CHECK_THAT(first("pipes: {sizes: []}"), says("standing"));
    CHECK_THAT(first(head + "2.375, wall: {40: 1}}]}"), says("unknown key 'wall'"));
}
