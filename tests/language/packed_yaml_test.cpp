#include "language/packed_yaml.hpp"

#include "catch.hpp"
#include "criteria/embedded.hpp"

#include <stdexcept>

using namespace beadbook;

TEST_CASE("a packed tree is the tree, with every place and quote") {
    Issues issues;
    const std::string text =
        "a: no\n\"b c\": [010, \"x y\", '']\nc:\n  d: |\n    1\n    2\n  e: {}\n  f: []\n";
    const Yaml tree = parse_yaml(text, issues);
    REQUIRE(issues.all().empty());
    const Yaml again = unpacked(packed(tree));
    CHECK(packed(again) == packed(tree));
    const Yaml *list = again.find("b c");
    REQUIRE(list);
    CHECK(list->where.line == 2);
    CHECK(list->items.at(1).quoted);
    CHECK(list->items.at(1).text == "x y");
    CHECK(again.find("c")->find("d")->text == "1\n2\n");
    CHECK(again.entries.at(1).key_where.column == 1);
}

TEST_CASE("what is no packed tree is refused") {
    Issues issues;
    const std::string whole = packed(parse_yaml("a: [1, 2]", issues));
    for (std::size_t size = 0; size < whole.size(); ++size)
        CHECK_THROWS_AS(unpacked(whole.substr(0, size)), std::logic_error);
    CHECK_THROWS_AS(unpacked("x1 1 1 a"), std::logic_error);
}

TEST_CASE("every YAML file that is built in was read as it is read today") {
    int files = 0;
    for (const auto &file : embedded_files()) {
        const std::string name(file.name), text(file.text);
        if (!name.ends_with(".yaml")) {
            CHECK_FALSE(packed_tree_of(text));
            continue;
        }
        INFO(name);
        Issues issues;
        const auto known = packed_tree_of(text);
        REQUIRE(known);
        CHECK(*known == packed(parse_yaml(text, issues)));
        CHECK_FALSE(packed_tree_of(text + "\n"));
        ++files;
    }
    CHECK(files > 50);
}
