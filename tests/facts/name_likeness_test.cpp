// Names that one person may be written by, where two persons are asked.
#include "facts/name_likeness.hpp"

#include "catch.hpp"

using namespace beadbook;

TEST_CASE("a name is folded to the letters that it is read as") {
    CHECK(folded_name("A. Field") == "a. field");
    CHECK(folded_name("Ren\xC3\xA9 \xC3\x98stby") == "rene ostby");
    CHECK(folded_name("Rene\xCC\x81") == "rene");        // a mark of its own
    CHECK(folded_name("A. Fi\xD0\xB5ld") == "a. field"); // Cyrillic
    CHECK(folded_name("\xCE\x91. Field") == "a. field"); // Greek
    CHECK(folded_name("A. Fi\xE2\x80\x8B"
                      "eld") == "a. field");                 // nothing that is seen
    CHECK(folded_name("\xEF\xBC\xA1. Field") == "a. field"); // wide
    CHECK(folded_name("\xE6\x9D\x8E") == "\xE6\x9D\x8E");    // no letter of ours is like it
}

TEST_CASE("one person may be written in several ways") {
    const auto same = [](const char *a, const char *b) {
        INFO(a << " and " << b);
        CHECK(may_be_same_person(a, b));
        CHECK(may_be_same_person(b, a));
    };
    same("A. Field", "a field");
    same("A. Field", "Field, A.");
    same("A. Field", "Arthur Field");
    same("A. Field", "Field");
    same("A. Field", "AF");
    same("A. B. Field", "AB Field");
    same("A. Field", "A. Fi\xD0\xB5ld");
    same("A. Field", "A. F1eld");
    same("A. Field", "A. Fle1d");
    same("R. Bernd", "R. Bemd");
    same("O. Moore", "0. M0ore");
    same("A. Field (L1)", "L1");
    same("Ren\xC3\xA9 Shore", "Rene Shore");
}

TEST_CASE("two persons are two") {
    const auto other = [](const char *a, const char *b) {
        INFO(a << " and " << b);
        CHECK_FALSE(may_be_same_person(a, b));
        CHECK_FALSE(may_be_same_person(b, a));
    };
    other("A. Field", "B. Field");
    other("A. Field", "A. Shore");
    other("A. Field", "B. Shore");
    other("Arthur Field", "Anne Field");
    other("A. Field", "");
    other("L1", "L2");
    other("\xE6\x9D\x8E", "\xE7\x8E\x8B");
}

TEST_CASE("a name with a slip of the hand may be the other, a shorter word or another initial may not") {
    for (const auto &[a, b] : {std::pair{"A. Field", "A Feild"},
                               {"A. Field", "A. Fields"},
                               {"Arthur Field", "A. Fild"},
                               {"A. Field", "A. Fiend"}}) {
        INFO(a << " " << b);
        CHECK(may_be_misspelt(a, b));
        CHECK(may_be_misspelt(b, a));
    }
    for (const auto &[a, b] : {std::pair{"A. Field", "B. Field"},
                               {"J. Ree", "J. Rea"},
                               {"A. Field", "A. Flield2"},
                               {"A. Field", "A. Meadow"},
                               {"Jane Field", "Jone Feild"}}) {
        INFO(a << " " << b);
        CHECK_FALSE(may_be_misspelt(a, b));
    }
}

TEST_CASE("a number in a name tells two apart") {
    for (const auto &[a, b] : {std::pair{"Learner, 2.", "Learner, 12."},
                               {"Learner, 1.", "Learner, 11."},
                               {"Learner, 1.", "Learner, 100."},
                               {"Learner No11", "Learner No12"}}) {
        INFO(a << " " << b);
        CHECK_FALSE(may_be_taken_for(a, b));
    }
    CHECK(may_be_taken_for("Ann Learner", "A. Learner"));
    CHECK(may_be_taken_for("Ann Learner", "Ann Lerner"));
    CHECK_FALSE(may_be_taken_for("A", "Ann Learner")); // a letter stands for anybody
}
