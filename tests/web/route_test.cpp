// Paths, patterns and forms.
#include "catch.hpp"
#include "web/route.hpp"

#include <map>
#include <optional>
#include <set>

using namespace beadbook;

TEST_CASE("a pattern takes the paths that are of it, and names their words") {
    using Words = std::map<std::string, std::string>;
    CHECK(words_by("/", "/") == Words{});
    CHECK(words_by("/coupon/:mark", "/coupon/T-7") == Words{{"mark", "T-7"}});
    CHECK(words_by("/coupon/:mark/exam/:exam", "/coupon/T-7/exam/2") ==
          Words{{"mark", "T-7"}, {"exam", "2"}});
    for (const char *path :
         {"/coupon", "/coupon/", "/coupon/T-7/", "/coupon//T-7", "/coupons/T-7", "coupon/T-7", "", "//"}) {
        INFO(path);
        CHECK_FALSE(words_by("/coupon/:mark", path));
    }
    CHECK_FALSE(words_by("/", "/x"));
}

TEST_CASE("no two routes are of one way and one pattern, and all pages begin with a stroke") {
    std::set<std::string> seen;
    for (const auto &family : page_families())
        for (const auto &route : family.routes) {
            INFO(route.method << " " << route.pattern);
            CHECK(seen.insert(route.method + " " + route.pattern).second);
            CHECK(route.pattern.starts_with("/"));
            CHECK((route.method == "GET" || route.method == "POST"));
        }
}

TEST_CASE("a form is read as browsers write it") {
    const SentFields f = fields_in("line=pore+0.04+at+3%3A00&x=1&x=2&empty=&alone&bad=%zz%4&%C3%A4=%C3%B6");
    CHECK(f.text("line") == "pore 0.04 at 3:00");
    CHECK(f.text("x") == "2");
    CHECK(f.all("x") == std::vector<std::string>{"1", "2"});
    CHECK(f.has("empty"));
    CHECK(f.text("alone", "-").empty());
    CHECK(f.text("bad") == "%zz%4");
    CHECK(f.text("\xC3\xA4") == "\xC3\xB6");
    CHECK(f.text("none", "other") == "other");
    CHECK(fields_in("").empty());
    CHECK(fields_in("a=1; b=2", ';').text("b") == "2");
    for (const std::string text : {"T-7", "a b/c?d&e=f%g", "\xC3\xA4\n\"'<>"})
        CHECK(fields_in("x=" + url_word(text)).text("x") == text);
}
