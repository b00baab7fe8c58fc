#include "records/codecs/parts.hpp"

#include "catch.hpp"
#include "measure/refusal.hpp"

using namespace beadbook;
using namespace beadbook::codec;

TEST_CASE("parts come back as they were put, whatever is in them") {
    PartsWriter to;
    const std::vector<std::string> texts{"", "3:abc", "a\nb", std::string("\0x", 2), "\xC3\xA9"};
    to.put_all(texts, [&](const std::string &text) { to.put(text); });
    to.put_number(-9'000'000'000);
    const std::string text = std::move(to).text();
    PartsReader from(text);
    std::vector<std::string> back;
    from.each([&] { back.push_back(from.text()); });
    CHECK(back == texts);
    CHECK(from.number() == -9'000'000'000);
    CHECK(from.at_end());
}

TEST_CASE("what is no row of parts is refused") {
    for (const char *text : {"", "3", "3:ab", "x:a", ":", "99999999999999999999:a", "-1:a"}) {
        INFO(text);
        PartsReader from(text);
        CHECK_THROWS_AS(from.next(), StoreError);
    }
    for (const char *text : {"0:", "1:x", "2:1x", "20:99999999999999999999"}) {
        INFO(text);
        PartsReader from(text);
        CHECK_THROWS_AS(from.number(), StoreError);
    }
}
