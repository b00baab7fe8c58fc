// No qualification shown valid rests on a coupon that a fresh judge would not accept, unless what was set
// aside is printed with it: looked at after each step of random histories.
#include "catch.hpp"
#include "properties/history.hpp"

#include <cstdlib>
#include <random>

using namespace beadbook;
using namespace beadbook::test;

namespace {

constexpr std::size_t usual_histories = 40;

std::size_t histories_to_try() {
    const char *asked = std::getenv("BEADBOOK_RANDOM_HISTORIES");
    return asked ? static_cast<std::size_t>(std::strtoul(asked, nullptr, 10)) : usual_histories;
}

} // namespace

TEST_CASE("whatever happens, what is shown valid rests on accepted coupons or says what was set aside",
          "[properties][long]") {
    HistoryTally tally;
    const std::size_t histories = histories_to_try();
    for (unsigned n = 0; n < histories; ++n) {
        std::mt19937 random(20261126 + n);
        History history(
            [&](int from, int to) { return std::uniform_int_distribution<int>(from, to)(random); }, tally);
        for (int step = 0; step < 60; ++step) {
            history.step();
            for (const auto &fault : history.faults()) FAIL(fault);
            if (step % 8 == 7) CHECK(history.false_lines_now().empty());
        }
    }
    // Guards the property itself: every sort of step was taken, and every state was met. A few histories, as
    // sanitizers have time for, need not.
    if (histories < usual_histories) return;
    for (const char *what : {"weld a test",
                             "weld and leave it unexamined",
                             "examine",
                             "log more",
                             "correct a find",
                             "withdraw a find",
                             "withdraw an exam",
                             "reopen an exam",
                             "finish",
                             "change a coupon",
                             "grade",
                             "qualify",
                             "qualify by override",
                             "renew",
                             "renew by override",
                             "extend",
                             "use",
                             "train",
                             "revoke",
                             "retract"}) {
        INFO(what << ", refused last: " << tally.refused[what]);
        CHECK(tally.done[what] > 0);
    }
    for (const char *what : {"valid", "lapsed", "revoked", "no longer proved", "in doubt",
                             "rests on an accept", "rests on an override", "rests on a renewal"}) {
        INFO(what);
        CHECK(tally.seen[what] > 0);
    }
}
