#include "catch.hpp"
#include "terminal/call.hpp"
#include "terminal/command.hpp"

#include <sstream>

using namespace beadbook;

namespace {

std::vector<Option> some_options() {
    return options(Option{"json", "", "for programs"}, Option{"file", "FILE", "lines from it", 'f'},
                   std::vector<Option>{{"condition", "NAME=VALUE", "may be repeated", 0, true}});
}

std::string refusal(const std::vector<std::string> &words) {
    try {
        parse_words(some_options(), words);
    } catch (const UsageError &e) {
        return e.what();
    }
    return "";
}

} // namespace

TEST_CASE("words are taken apart into flags, values, repeated values and the rest") {
    const Args args = parse_words(some_options(), {"T-1", "--condition", "a=1", "-f", "x.txt", "pore 0.1",
                                                   "--json", "--condition=b=2", "--", "--not-an-option"});
    CHECK(args.has("json"));
    CHECK(args.text("file") == "x.txt");
    CHECK(args.all("condition") == std::vector<std::string>{"a=1", "b=2"});
    CHECK(args.positional() == std::vector<std::string>{"T-1", "pore 0.1", "--not-an-option"});
    CHECK(args.at(1) == "pore 0.1");
}

TEST_CASE("what was not given is absent, and an empty value is given") {
    const Args none = parse_words(some_options(), {});
    CHECK_FALSE(none.has("json"));
    CHECK_FALSE(none.has("file"));
    CHECK(none.text("file", "-") == "-");
    CHECK(none.all("condition").empty());
    CHECK(none.positional().empty());
    const Args empty = parse_words(some_options(), {"--file", ""});
    CHECK(empty.has("file"));
    CHECK(empty.text("file", "-").empty());
}

TEST_CASE("wrong options are refused and the nearest name is told") {
    CHECK(refusal({"--jsno"}) == "there is no option '--jsno'; did you mean '--json'?");
    CHECK(refusal({"--fil", "x"}) ==
          "there is no option '--fil'; did you mean '--file'? an option is written in full");
    CHECK_FALSE(refusal({"--file"}).empty());
    CHECK_FALSE(refusal({"--json=yes"}).empty());
    CHECK_FALSE(refusal({"--file", "a", "--file", "b"}).empty());
    CHECK_FALSE(refusal({"--json", "--json"}).empty());
}

TEST_CASE("the help of options names values, quick names and meaning") {
    const std::string help = options_help(some_options(), 100);
    CHECK(help.find("--json ") != std::string::npos);
    CHECK(help.find("-f, --file FILE") != std::string::npos);
    CHECK(help.find("--condition NAME=VALUE") != std::string::npos);
    CHECK(help.find("lines from it") != std::string::npos);
    // At the width of the terminal, without blanks at line ends.
    for (const std::size_t width : {40U, 60U, 100U, 160U}) {
        std::istringstream lines(options_help(option_group("coupon fields"), width));
        for (std::string line; std::getline(lines, line);) {
            INFO(width << ": " << line);
            CHECK((line.size() <= width || line.find(' ', line.find_first_not_of(' ')) == line.npos));
            CHECK((line.empty() || line.back() != ' '));
        }
    }
}
