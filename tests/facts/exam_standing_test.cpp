#include "facts/exam_standing.hpp"

#include "catch.hpp"

using namespace beadbook;

TEST_CASE("a level is a level, with its scheme or without, and nothing beside it") {
    for (const char *text : {"I", "II", "III", "2", "level II", "Level 3", "ASNT II", "ASNT Level II",
                             "ISO 9712 level 2", "SNT-TC-1A II", "VT II", "RT-2", "II (ISO 9712)", "CWI",
                             "AWS SCWI", "certified level II", "II, level 2"}) {
        INFO(text);
        CHECK(no_word_of_level(text).empty());
    }
    for (const auto &[text, odd] : {std::pair("assistant to level II", "assistant"),
                                    {"III (lapsed)", "lapsed"},
                                    {"not II", "not"},
                                    {"II?", "II?"},
                                    {"II ?", "?"},
                                    {"to II", "to"},
                                    {"I or II", "or"},
                                    {"II/III", "III"},
                                    {"ISO 9712", "ISO 9712"},
                                    {"level", "level"},
                                    {"good", "good"},
                                    {"IV", "IV"}}) {
        INFO(text);
        CHECK(no_word_of_level(text) == odd);
    }
}
