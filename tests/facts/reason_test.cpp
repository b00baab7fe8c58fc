#include "facts/reason.hpp"

#include "catch.hpp"
#include "measure/refusal.hpp"

using namespace beadbook;

TEST_CASE("a reason holds a word of two letters") {
    for (const char *text : {"ok for the lens", "a slip", "T-1 was Bo's", "\xC3\xA9t\xC3\xA9", "1 mm off",
                             "not known", "no backing gas"}) {
        INFO(text);
        CHECK(gives_reason(text));
        CHECK(checked_reason(text, "reason") == text);
    }
    for (const char *text : {".", "x", "--", "1", "12.5", "a b", "\xC3\xA9", "?!", "None", "n/a", "N.A.",
                             "no", "not used", "ok", "Yes.", "test"}) {
        INFO(text);
        CHECK_FALSE(gives_reason(text));
        CHECK_THROWS_AS(checked_reason(text, "reason"), DataError);
    }
    CHECK(checked_reason("  ", "reason").empty()); // whoever asks says what lacks
}
