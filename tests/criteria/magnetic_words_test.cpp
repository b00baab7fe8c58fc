// Metals that by their name are not magnetic.
#include "catch.hpp"
#include "criteria/magnetic_words.hpp"

using namespace beadbook;

TEST_CASE("a text names a metal that is not magnetic", "[magnetic]") {
    for (const char *text : {"6061 aluminium",
                             "aluminum",
                             "titanium grade 2",
                             "AZ31B magnesium",
                             "copper",
                             "brass",
                             "zirconium",
                             "304",
                             "304L stainless steel",
                             "AISI 316 steel",
                             "TP321",
                             "347H",
                             "UNS S31603",
                             "1.4301",
                             "austenitic stainless steel",
                             "nickel alloy",
                             "N06625",
                             "non-magnetic steel",
                             "nonmagnetic steel",
                             "carbon steel to 316L stainless"}) {
        INFO(text);
        CHECK(names_unmagnetic_metal(text));
    }
    for (const char *text :
         {"", "steel", "stainless steel", "410 stainless", "duplex S31803", "S32101", "nickel", "nickel 200",
          "9% nickel alloy steel", "A 302 steel", "SA 302", "A335 P11 steel", "S355", "iron",
          "steel or copper", "not copper", "304?", "3044", "P304X"}) {
        INFO(text);
        CHECK_FALSE(names_unmagnetic_metal(text));
    }
}

TEST_CASE("a text names a metal that is magnetic") {
    for (const char *text : {"carbon steel", "4130 steel", "AISI 4130", "mild steel", "cast iron",
                             "410 stainless steel", "stainless steel welded to carbon steel",
                             "low alloy steel", "ferritic stainless", "carbon-manganese steel"}) {
        INFO(text);
        CHECK(names_magnetic_metal(text));
    }
    for (const char *text : {"steel", "stainless steel", "304L stainless", "316L low carbon", "nickel alloy",
                             "non-magnetic cast iron", "aluminium", "nickel iron", "titanium"}) {
        INFO(text);
        CHECK_FALSE(names_magnetic_metal(text));
    }
}
