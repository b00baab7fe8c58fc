// Who is meant by a name, and what names nobody.
#include "catch.hpp"
#include "facts/person_name.hpp"

using namespace beadbook;

TEST_CASE("a name is somebody's who can be asked", "[names]") {
    for (const char *name : {"A. Field", "Field", "Ng", "J.R.", "A. Field II", "I. Ng", "Vt. Marsh",
                             "\xC3\x89mile", "\xE7\x8E\x8B", "L1", "The Hague Inspection"})
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
                             "\xC2\xA0",
                             "- -"}) {
        INFO(name);
        CHECK_FALSE(names_somebody(name));
    }
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
