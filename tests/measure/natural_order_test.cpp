#include "measure/natural_order.hpp"

#include "catch.hpp"

#include <algorithm>
#include <random>
#include <string>
#include <vector>

using namespace beadbook;

TEST_CASE("marks stand in the order in which people count") {
    std::vector<std::string> marks{"L10", "L2", "l3", "L1", "L02", "K-9", "L", "L2b", "T-1.10", "T-1.9", ""};
    std::sort(marks.begin(), marks.end(), NaturalOrder{});
    CHECK(marks ==
          std::vector<std::string>{"", "K-9", "L", "L1", "L02", "L2", "L2b", "l3", "L10", "T-1.9", "T-1.10"});
    // Any number of digits.
    CHECK(NaturalOrder{}("A99999999999999999999999", "A100000000000000000000000"));
}

TEST_CASE("the natural order is an order: of two that differ one is first, and it carries on") {
    std::mt19937 random(5);
    std::vector<std::string> words;
    for (int n = 0; n < 60; ++n) {
        std::string word;
        for (std::size_t k = random() % 5; k > 0; --k) word += "aA019-"[random() % 6];
        words.push_back(word);
    }
    const NaturalOrder less;
    for (const auto &a : words)
        for (const auto &b : words) {
            INFO("'" << a << "' and '" << b << "'");
            CHECK((less(a, b) || less(b, a)) == (a != b));
            CHECK_FALSE((less(a, b) && less(b, a)));
            for (const auto &c : words)
                if (less(a, b) && less(b, c)) REQUIRE(less(a, c));
        }
}
