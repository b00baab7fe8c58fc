#include "records/codecs/located.hpp"

#include "catch.hpp"
#include "measure/refusal.hpp"

using namespace beadbook;
using namespace beadbook::codec;

TEST_CASE("every value of a JSON text knows where it stood") {
    const std::string text =
        "\xEF\xBB\xBF{\"a\" : [1, -2.5,\n  \"x\\\"]\", true ,null],\r\n\t\"b\":{ }, \"c\":12}";
    const Located root = read_located(text);
    const auto at = [&](const Located &value) { return text.substr(value.at, 4); };
    REQUIRE(root.kind == Located::Kind::object);
    REQUIRE(root.items.size() == 3);
    const auto &list = root.items[0].items;
    REQUIRE(list.size() == 5);
    CHECK(root.at == 3);
    CHECK(text.substr(root.items[0].key_at, 3) == "\"a\"");
    CHECK(at(root.items[0]) == "[1, ");
    CHECK(at(list[0]) == "1, -");
    CHECK(list[0].whole == 1);
    CHECK(at(list[1]) == "-2.5");
    CHECK(list[1].text == "-2.5");
    CHECK_FALSE(list[1].is_whole);
    CHECK(at(list[2]) == "\"x\\\"");
    CHECK(list[2].text == "x\"]");
    CHECK(at(list[3]) == "true");
    CHECK(at(list[4]) == "null");
    CHECK(at(root.items[1]) == "{ },");
    CHECK(at(root.items[2]) == "12}");
    CHECK(place_in(text, root.items[1].key_at) == "3:2");
    CHECK(place_in("\xC3\xA9\xC3\xA9x", 4) == "1:3"); // characters, not bytes
    CHECK(root.find("b") == &root.items[1]);
    CHECK_FALSE(root.find("d"));
}

TEST_CASE("a key that stands twice is marked, wherever it stands") {
    const Located root = read_located(R"({"b": 1, "a": 2, "b": {"x": 1, "x": 2, "x": 3}})");
    REQUIRE(root.items.size() == 3);
    CHECK_FALSE(root.items[0].key_given_twice);
    CHECK_FALSE(root.items[1].key_given_twice);
    CHECK(root.items[2].key_given_twice);
    CHECK_FALSE(root.items[2].items[0].key_given_twice);
    CHECK(root.items[2].items[1].key_given_twice);
    CHECK(root.items[2].items[2].key_given_twice);
}

TEST_CASE("what is no JSON is refused with its place") {
    const std::vector<std::pair<std::string, std::string>> rows{
        {"", "this is not JSON: 1:1: "},
        {"{\n \"a\": }", "this is not JSON: 2:7: syntax error"},
        {"[1] 2", "this is not JSON: 1:5: "},
        {"[1e999]", "number overflow"},
        {"{\"a\"", "this is not JSON: 1:5: "},
        {"[\"\xFF\"]", "this is not JSON: 1:3: "},
        {std::string(100'000, '['), "1:25: lists and objects are nested deeper than 24"},
        {std::string(100'000, '[') + std::string(100'000, ']'), "nested deeper than 24"},
    };
    for (const auto &[text, expected] : rows) {
        INFO(text.substr(0, 40));
        CHECK_THROWS_AS(read_located(text), DataError);
        CHECK_THROWS_WITH(read_located(text), says(expected));
    }
    std::string deep = "1";
    for (int i = 0; i < 12; ++i) deep = "[{\"a\":" + deep + "}]";
    CHECK_NOTHROW(read_located(deep));
    // A message stays short and readable whatever the file holds.
    try {
        read_located("[" + std::string(5000, 'x') + "]");
        FAIL("taken");
    } catch (const DataError &e) {
        CHECK(std::string(e.what()).size() < 400);
    }
}

TEST_CASE("a number too large for a whole one is known as such") {
    const Located root = read_located("[9223372036854775807, 9223372036854775808, 1.0]");
    CHECK(root.items[0].is_whole);
    CHECK(root.items[0].whole == 9223372036854775807);
    CHECK_FALSE(root.items[1].is_whole);
    CHECK_FALSE(root.items[2].is_whole);
}
