#include "catch.hpp"
#include "measure/refusal.hpp"
#include "qualify/examined_weld.hpp"

using namespace beadbook;

TEST_CASE("a weld of the work is stated with day, methods, that it was accepted, and by whom", "[qualify]") {
    const ExaminedWeld one =
        read_examined_weld("2026-10-05 VT, rt and bends accepted by A. Field, line 4, weld 17");
    CHECK(one.day == parse_day("2026-10-05"));
    CHECK(one.methods == std::vector<std::string>{"VT", "RT", "mechanical"});
    CHECK(one.who == "A. Field");
    CHECK(one.what == "line 4, weld 17");
    CHECK(read_examined_weld("2026-10-05 UT accepted by A. Field").what.empty());
}

TEST_CASE("what states no accepted weld is refused with what is wanted", "[qualify]") {
    const auto refused_with = [](const std::string &text) -> std::string {
        try {
            read_examined_weld(text);
        } catch (const InputError &e) {
            return e.what();
        }
        return "";
    };
    const std::pair<const char *, const char *> cases[] = {
        {"hello", "does not begin with its day"},
        {"", "does not begin with its day"},
        {"2026-10-05", "does not say that the weld was accepted, and by whom"},
        {"2026-10-05 hello", "does not say that the weld was accepted, and by whom"},
        {"2026-10-05 RT rejected", "it says 'rejected'"},
        {"2026-10-05 RT rejected, then accepted by A. Field", "it says 'rejected'"},
        {"2026-10-05 RT not accepted by A. Field", "it says 'not'"},
        {"2026-10-05 RT accepted by A. Field, bend failed", "it says 'failed'"},
        {"2026-10-05 RT accepted", "does not say that the weld was accepted, and by whom"},
        {"2026-10-05 RT accepted by", "does not say that the weld was accepted, and by whom"},
        {"2026-10-05 RT accepted by , line 4", "does not say who accepted the weld"},
        {"2026-10-05 accepted by A. Field", "by which method"},
        {"2026-10-05 XRF accepted by A. Field", "'XRF' is no examination"}};
    for (const auto &[text, why] : cases) {
        INFO(text);
        CHECK_THAT(refused_with(text), says(why));
        CHECK_THAT(refused_with(text), says("2026-10-05 RT accepted by A. Field, line 4 weld 17"));
    }
}
