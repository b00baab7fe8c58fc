#include "catch.hpp"
#include "measure/text.hpp"

using namespace beadbook;

TEST_CASE("what acts on a screen or is not seen is written as its number, and nothing else is touched") {
    const std::vector<std::pair<std::string, std::string>> rows{
        {"plain, with\ttabs\nand lines", "plain, with\ttabs\nand lines"},
        {"\xC3\xA4 \xC2\xB0 \xE2\x80\x9Cq\xE2\x80\x9D \xE6\xBC\xA2 \xF0\x9F\x94\xA7",
         "\xC3\xA4 \xC2\xB0 \xE2\x80\x9Cq\xE2\x80\x9D \xE6\xBC\xA2 \xF0\x9F\x94\xA7"},
        {"\x1B[2J", "<U+001B>[2J"},
        {"a\rb", "a<U+000D>b"},
        {"\x7F", "<U+007F>"},
        {"\xC2\x9B", "<U+009B>"},          // C1: begins a control sequence in one byte
        {"\xC2\xAD", "<U+00AD>"},          // soft hyphen
        {"\xE2\x80\x8B", "<U+200B>"},      // blank without width
        {"\xE2\x80\x8D", "\xE2\x80\x8D"},  // joiner of letters
        {"\xE2\x80\xAE", "<U+202E>"},      // right to left override
        {"\xE2\x81\xA9", "<U+2069>"},      // end of an isolate
        {"\xEF\xBB\xBF", "<U+FEFF>"},      // byte order mark
        {"\xF3\xA0\x81\x81", "<U+E0041>"}, // tag
        {"\xFF\xC3", "<FF><C3>"},          // no UTF-8
        {"", ""},
    };
    for (const auto &[text, expected] : rows) {
        INFO(expected);
        CHECK(visible(text) == expected);
        CHECK(visible(visible(text)) == expected);
    }
    CHECK(visible(std::string("a\0b", 3)) == "a<U+0000>b");
    CHECK(escaped_for_json("{\"a\": \"x\xE2\x80\xAE\"}") == "{\"a\": \"x\\u202e\"}");
    CHECK(escaped_for_json("\xF3\xA0\x81\x81") == "\\udb40\\udc41");
}
