// Whoever watches a terminal is told of a wait before a command goes through a large record.
#include "catch.hpp"
#include "cli/deeds.hpp"
#include "cli/still_session.hpp"
#include "pages/bench.hpp"
#include "temporary.hpp"

#include <sstream>

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// What stands on the error stream of a terminal for which so many coupons are many.
std::string told(const TemporaryFolder &folder, std::size_t many, const std::vector<std::string> &words) {
    std::istringstream in;
    std::ostringstream out, err;
    Session session = still_session(in, out, err, true, [&](const std::string &name) {
        return name == "BEADBOOK_BOOK"   ? folder.file("book.db")
               : name == "BEADBOOK_USER" ? std::string("tester")
                                         : std::string();
    });
    session.many = many;
    REQUIRE(run_words(deeds(run_bench), words, session) == 0);
    return err.str();
}

} // namespace

TEST_CASE("what goes through all coupons says so first, if there are many and somebody watches") {
    const TemporaryFolder folder;
    told(folder, Session::no_number, {"register", "T-1..T-3"});
    for (const char *command : {"verify", "refresh", "summary", "rejudge"}) {
        INFO(command);
        CHECK_THAT(told(folder, 3, {command}), says("going through 3 coupons"));
        CHECK(told(folder, 3, {command, "--quiet"}).empty());
        CHECK(told(folder, 4, {command}).empty());
    }
    CHECK(told(folder, 1, {"show", "T-1"}).empty());
}
