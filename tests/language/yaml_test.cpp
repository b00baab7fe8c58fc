#include "catch.hpp"
#include "language/yaml.hpp"

using namespace beadbook;

namespace {

std::string issues_of(const std::string &text) {
    Issues issues;
    read_yaml(text, issues);
    std::string out;
    for (const auto &i : issues.all())
        out += std::to_string(i.where.line) + ":" + std::to_string(i.where.column) + " " + i.text + "\n";
    return out;
}

} // namespace

TEST_CASE("a YAML file keeps its words and places") {
    Issues issues;
    const Yaml root = read_yaml("a: no\nb: [010, \"x\"]\nc:\n  d: 1/2 in\n", issues);
    REQUIRE(issues.all().empty());
    CHECK(root.find("a")->text == "no");
    CHECK(root.find("b")->items[0].text == "010");
    CHECK(root.find("b")->items[1].quoted);
    CHECK(root.find("c")->find("d")->where.line == 4);
    CHECK(root.find("c")->find("d")->where.column == 6);
    CHECK(root.find("nothing") == nullptr);
}

TEST_CASE("what hides meaning in YAML is refused at its place") {
    CHECK(issues_of("a: 1\nb: 2\na: 3\n") == "3:1 key 'a' stands here a second time\n");
    CHECK(issues_of("a: &x 1\nb: *x\n") ==
          "1:4 found an anchor (&name); anchors are not allowed\n"
          "2:4 found an alias (*name); write the value out, aliases are not allowed\n");
    CHECK(issues_of("a: 1\n<<: {b: 2}\n").find("2:1 found a merge key") == 0);
    CHECK(issues_of("a: 1\n---\nb: 2\n").find("found a second document") != std::string::npos);
    CHECK(issues_of("a: !!int 1\n").find("found a tag") != std::string::npos);
    CHECK(issues_of("a:\nb: 1\n") == "1:1 nothing stands behind it; expected a value, or lines below it that "
                                     "begin further to the right\n");
    CHECK(issues_of("").find("the file is empty") != std::string::npos);
    CHECK(issues_of("a: [1, 2\n").find("this is not YAML") != std::string::npos);
    CHECK(issues_of("a: \xff\n").find("not UTF-8") != std::string::npos);
    CHECK(issues_of(std::string("a: b\0c\n", 7)).find("not UTF-8") != std::string::npos);
    CHECK(issues_of(std::string(100, '[')).find("nested too deeply") != std::string::npos);
    CHECK(issues_of("{[1]: 2}\n").find("found a list or map as a key") != std::string::npos);
}

TEST_CASE("a line that begins in a wrong column is told with the one that it seems to belong to") {
    const std::string entry = "a:\n  - b: 1\n    c: 2\n";
    CHECK_THAT(issues_of(entry + "   d: 3\n"),
               says("4:4 ") && says("'c' of line 3, which begins in column 5"));
    CHECK_THAT(issues_of(entry + "      d: 3\n"), says("4:7 ") && says("'c' of line 3"));
    CHECK_THAT(issues_of(entry + "    - b: 3\n"), says("4:5 ") && says("'- b' of line 2"));
    CHECK_THAT(issues_of(entry + " - b: 3\n"), says("'- b' of line 2, which begins in column 3"));
    CHECK_THAT(issues_of(entry + "d: 3\n    e: 4\n"),
               says("in line with 'c' of line 3") && says("'d' of line 4 between the two"));
    // What begins where it may says what it said before.
    CHECK_THAT(issues_of("a:b\nc: 1\n"), says("a colon stands where no value can begin"));
    CHECK_THAT(issues_of("a:\n- b: 1\n- c: d: e\n"), says("a colon stands where no value can begin"));
    CHECK_THAT(issues_of("a: {b: 1,\n c: 2\nd: 3\n"), says("a map is not closed with }"));
}

TEST_CASE("a comma inside braces is told once, with what was meant") {
    const auto told = [](const std::string &text) {
        Issues issues;
        read_yaml(text, issues);
        std::string out;
        for (const auto &one : issues.all()) out += one.text + "\n";
        return out;
    };
    CHECK_THAT(told("at most: {A: 2,5 in, B: 1,5 in}\n"),
               says("'5 in' has no value") && says("a decimal with a point") && !says("second time"));
    CHECK_THAT(told("at most: {A: min(T, 1 in), B: min(T, 1 in)}\n"), says("'lesser of T and 1 in'"));
    CHECK_THAT(told("a: {b: one, two}\n"), says("put a text with a comma in quotes"));
    CHECK_THAT(told("a:\n"), says("nothing stands behind it"));
}
