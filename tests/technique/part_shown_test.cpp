#include "technique/part_shown.hpp"

#include "catch.hpp"

using namespace beadbook;

TEST_CASE("too few exposures through both walls do not show all of a girth weld") {
    Coupon straight, girth;
    girth.line.closed = true;
    for (const char *view : {"double wall single image", "ellipse", "superimposed"}) {
        INFO(view);
        CHECK_FALSE(part_not_shown({{"view", view}, {"exposures", "1"}}, girth).empty());
        const bool twice = view == std::string("ellipse");
        CHECK(part_not_shown({{"view", view}, {"exposures", twice ? "2" : "3"}}, girth).empty());
        CHECK_FALSE(part_not_shown({{"view", view}, {"exposures", twice ? "1" : "2"}}, girth).empty());
        CHECK(part_not_shown({{"view", view}}, girth).empty());
        CHECK_FALSE(part_perhaps_not_shown({{"view", view}}, girth).empty());
        CHECK(part_perhaps_not_shown({{"view", view}}, straight).empty());
        CHECK(part_perhaps_not_shown({{"view", view}, {"exposures", "3"}}, girth).empty());
        CHECK(part_not_shown({{"view", view}, {"exposures", "1"}}, straight).empty());
    }
    CHECK(part_not_shown({{"view", "panoramic"}, {"exposures", "1"}}, girth).empty());
    CHECK(part_not_shown({{"view", "single wall"}, {"exposures", "1"}}, girth).empty());
    CHECK(part_not_shown({{"exposures", "1"}}, girth).empty());
    CHECK(part_perhaps_not_shown({{"exposures", "1"}}, girth).empty()); // from the inside, it may be
    CHECK(part_perhaps_not_shown({{"view", "panoramic"}}, girth).empty());
    CHECK_FALSE(part_perhaps_not_shown({{"view", "single wall"}}, girth).empty());
    CHECK_FALSE(part_perhaps_not_shown({{"view", "single wall"}, {"exposures", "1"}}, girth).empty());
    CHECK(part_perhaps_not_shown({{"view", "single wall"}, {"exposures", "3"}}, girth).empty());
    CHECK(part_perhaps_not_shown({{"view", "single wall"}, {"exposures", "1"}}, straight).empty());
    girth.facts[static_cast<Slot>(Fact::inside)] = word_index(info(Fact::inside), "closed");
    CHECK_FALSE(part_perhaps_not_shown({{"exposures", "1"}}, girth).empty());
    CHECK(part_perhaps_not_shown({{"exposures", "2"}}, girth).empty());
    CHECK_FALSE(part_perhaps_not_shown({{"view", "panoramic"}, {"exposures", "1"}}, girth).empty());
    CHECK(part_perhaps_not_shown({{"exposures", "one shot"}}, girth).empty()); // of an older record
}

TEST_CASE("a condition of people's own name may tell that a part was examined") {
    for (const auto &[name, value] : {std::pair{"coverage", "50 %"},
                                      {"Extent", "10%"},
                                      {"root", "not seen"},
                                      {"left out", "2 in"},
                                      {"back", "Not looked at"},
                                      {"cap", "partly"},
                                      {"access", "by mirror"},
                                      {"scanned", "1 in of 6 in"},
                                      {"film", "aborted"},
                                      {"films", "3 of 4"},
                                      {"lift test", "failed"},
                                      {"film 2", "lost"}})
        CHECK(tells_a_part(name, value));
    for (const auto &[name, value] : {std::pair{"coverage", "100 %"},
                                      {"root", "seen"},
                                      {"surface", "ground"},
                                      {"weather", "rain"},
                                      {"sides", "both"},
                                      {"cleaning", "not needed"},
                                      {"root pass", "purged"},
                                      {"films", "4 of 4"},
                                      {"current", "AC only"}})
        CHECK_FALSE(tells_a_part(name, value));
}
