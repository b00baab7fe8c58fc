// Words of different rules for one weld: which cannot both be true of it.
#include "qualify/contradicting_words.hpp"

#include "catch.hpp"

using namespace beadbook;

namespace {

bool agree(Trait trait, const char *a, const char *b) {
    CHECK(contradict(trait, a, b) == contradict(trait, b, a));
    return !contradict(trait, a, b);
}

} // namespace

TEST_CASE("positions of AWS and ISO are held against each other") {
    for (const auto &[a, b] : std::vector<std::pair<const char *, const char *>>{{"1G", "PA"},
                                                                                 {"1F", "PA"},
                                                                                 {"2F", "PB"},
                                                                                 {"2G", "PC"},
                                                                                 {"3G", "PF"},
                                                                                 {"3F", "PG"},
                                                                                 {"4F", "PD"},
                                                                                 {"4G", "PE"},
                                                                                 {"5G", "PH"},
                                                                                 {"5G", "PJ"},
                                                                                 {"6G", "H-L045"},
                                                                                 {"6GR", "J-L045"},
                                                                                 {"2G+5G", "PH + PC"}}) {
        INFO(a << " " << b);
        CHECK(agree(Trait::position, a, b));
    }
    CHECK_FALSE(agree(Trait::position, "6G", "PA"));
    CHECK_FALSE(agree(Trait::position, "2F", "PC"));
    CHECK_FALSE(agree(Trait::position, "4F", "PE"));
    CHECK_FALSE(agree(Trait::position, "5G", "H-L045"));
    CHECK_FALSE(agree(Trait::position, "6G", "PC+PH"));
    CHECK_FALSE(agree(Trait::position, "2G+5G", "2G"));
}

TEST_CASE("other words are, and one that nobody knows contradicts nothing") {
    CHECK(agree(Trait::transfer, "spray", "S"));
    CHECK_FALSE(agree(Trait::transfer, "short-circuit", "S"));
    CHECK(agree(Trait::backing, "without", "ss nb"));
    CHECK(agree(Trait::backing, "with", "SS MB"));
    CHECK_FALSE(agree(Trait::backing, "without", "ss mb"));
    CHECK(agree(Trait::backing, "without", "ss gb")); // called either
    CHECK_FALSE(agree(Trait::runs, "sl", "ML"));
    CHECK_FALSE(agree(Trait::progression, "up", "down"));
    CHECK(agree(Trait::progression, "up", "lw"));
    CHECK(agree(Trait::filler_group, "F6", "FM5"));
    CHECK(agree(Trait::position, "1G", "overhead"));
}

TEST_CASE("some positions tell the progression") {
    CHECK(progression_of("PF") == "up");
    CHECK(progression_of("PC+PJ") == "down");
    CHECK(progression_of("J-L045") == "down");
    CHECK(progression_of("3G").empty());
    CHECK(progression_of("PF+PG").empty());
    CHECK(progression_of("").empty());
}

TEST_CASE("two positions are one where a test in either holds a position in common") {
    CHECK(same_position("6G", "H-L045") == Truth::yes);
    CHECK(same_position("2G", "2G+5G") == Truth::yes);
    CHECK(same_position("5G + 2G", "PC") == Truth::yes);
    CHECK(same_position("2G+5G", "6G") == Truth::no);
    CHECK(same_position("PF", "PG") == Truth::no);
    CHECK(same_position("PC+PF", "PG") == Truth::no);
    CHECK(same_position("6G", "slanting") == Truth::unknown);
    CHECK(same_position("6G+slanting", "6G") == Truth::yes);
    CHECK(several_positions("2G+5G"));
    CHECK_FALSE(several_positions("6G"));
}
