// Who is meant by a name, and what names nobody.
#include "catch.hpp"
#include "facts/person_name.hpp"

using namespace beadbook;

TEST_CASE("a name is somebody's who can be asked", "[names]") {
    for (const char *name : {"A. Field", "Field", "Ng", "J.R.", "A. Field II", "I. Ng", "Vt. Marsh",
                             "\xC3\x89mile", "\xE7\x8E\x8B", "L1", "The Hague Inspection", "Root, E."})
        CHECK(names_somebody(name));
    for (const char *name : {"",
                             " ",
                             "x",
                             "X.",
                             "VT",
                             "pt, mt",
                             "II",
                             "Level II",
                             "VT level 2",
                             "7",
                             "nobody",
                             "No one",
                             "not examined",
                             "Not yet examined",
                             "the trainee",
                             "n/a",
                             "N.A.",
                             "TBD",
                             "examiner",
                             "the shop",
                             "root",
                             "Admin",
                             "office",
                             "Computer",
                             "test",
                             "N.N.",
                             "xxx",
                             "see film",
                             "QC",
                             "\xC2\xA0",
                             "- -"}) {
        INFO(name);
        CHECK_FALSE(names_somebody(name));
    }
}

TEST_CASE("a name has two letters, whatever it reads like", "[names]") {
    for (const char *name : {"An Na", "Li", "nobody", "\xD0\x9B\xD0\xB8"}) CHECK(may_be_a_name(name));
    for (const char *name : {"", "7", "42", "x", "- -", "X 1"}) CHECK_FALSE(may_be_a_name(name));
}

TEST_CASE("a person is the same in another order, with other points and capitals", "[names]") {
    for (const char *other : {"J. Reef", "j reef", "Reef, J.", "REEF J", "J.Reef", "JReef", "J. Reef (L1)",
                              "T. Bank / J. Reef"}) {
        INFO(other);
        CHECK(same_person("J. Reef", other));
        CHECK(same_person(other, "J. Reef"));
    }
    CHECK(same_person("J.R. Reef", "Reef JR"));
    CHECK(same_person("\xC3\x89mile Reef", "reef \xC3\xA9mile"));
    CHECK(same_person("J. Reef (L1)", "L1"));
    for (const char *other : {"T. Reef", "J. Reed", "Reef", "J. T. Reef", "", "L1"}) {
        INFO(other);
        CHECK_FALSE(same_person("J. Reef", other));
    }
    CHECK_FALSE(same_person("", ""));
}

TEST_CASE("a field that holds one person's name holds no second one", "[names]") {
    for (const char *name : {"A. Field",
                             "Anders Andersson",
                             "Anders van der Berg",
                             "O'Neil",
                             "Ann-Marie Sand",
                             "Reef, J.",
                             "Reef, J. R.",
                             "de Vries, J.",
                             "J. Reef, Jr.",
                             "J. Reef, PhD",
                             "J. Reef (L1)",
                             "J. Reef [L1]",
                             "A. Field (Level II)",
                             "A. Field / Level II",
                             "A. Field, CWI",
                             "L2",
                             "AB-12",
                             "W-1/2",
                             "north.L2",
                             "Karl von und zu Stein",
                             "n/a",
                             "nobody",
                             "",
                             "Learner No11",
                             "A. Field 2nd",
                             "Orhan Andrews",
                             "Ren\xC3\xA9 \xC3\x98stby",
                             "inspector 7"}) {
        INFO(name);
        CHECK(several_persons(name).empty());
    }
    for (const char *name : {"A. Field and L2",
                             "A. Field, L2",
                             "A. Field / L. Two",
                             "A. Field/L2",
                             "L2 and L9",
                             "L2 & L9",
                             "A. Field L2",
                             "L2 A. Field",
                             "A. Field, B. Shore",
                             "A. Field; B. Shore",
                             "A. Field (B. Shore)",
                             "A. Field + L2",
                             "A. Field | L2",
                             "A. Field with B. Shore",
                             "J. Reef, L. Two, Jr.",
                             "A. Field \xEF\xBC\x8F L2",
                             "A. Field (L2 and L9)",
                             "L2 L9",
                             "welder L2",
                             "L2, with the instructor",
                             "L2 himself"}) {
        INFO(name);
        CHECK_THAT(several_persons(name), says("one person is named here"));
    }
    CHECK_THAT(several_persons("A. Field,"), says("write the name alone, \"A. Field\""));
    CHECK_THAT(several_persons("Smith, John"), says("write \"John Smith\""));
    CHECK(several_persons("Smith, John", true).empty()); // he is on record so
    CHECK_FALSE(several_persons("Smith, L2", true).empty());
    CHECK_THAT(several_persons("van der Berg, Anna Lena"), says("write \"Anna Lena van der Berg\""));
}

TEST_CASE("keys of two names meet where they name one person", "[names]") {
    const std::vector<std::string> names{
        "J. Reef", "reef j", "JReef",   "J.R. Reef", "Reef JR",           "J. Reef (L1)", "L1",
        "T. Reef", "Reef",   "T. Bank", "",          "T. Bank / J. Reef", "R. Reef J"};
    for (const auto &a : names)
        for (const auto &b : names) {
            INFO(a << " | " << b);
            const auto one = person_keys(a), other = person_keys(b);
            CHECK(std::any_of(one.begin(), one.end(), [&](const auto &key) {
                      return std::find(other.begin(), other.end(), key) != other.end();
                  }) == same_person(a, b));
        }
}
