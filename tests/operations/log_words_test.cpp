// What may be said where finds are logged line by line.
#include "operations/log_words.hpp"

#include "catch.hpp"

using namespace beadbook;

TEST_CASE("that nothing was found is said in several ways, by the method that is named or none") {
    for (const char *line : {"none", "NONE", "none.", "Nothing found", "no indications", "nothing"}) {
        INFO(line);
        CHECK(log_order(line).word == LogWord::nothing);
        CHECK_FALSE(log_order(line).method);
    }
    for (const char *line : {"MT none", "none MT", "MT no indications.", "mt Nothing found"}) {
        INFO(line);
        CHECK(log_order(line).word == LogWord::nothing);
        CHECK(log_order(line).method == Exam::MT);
    }
    for (const char *line : {"VT OK", "none at 3", "no pores", "VT MT none"})
        CHECK(log_order(line).word == LogWord::none);
}

TEST_CASE("orders are taken in any capitals, and finish takes the number of an exam") {
    CHECK(log_order("ALL").word == LogWord::all);
    CHECK(log_order("Next").word == LogWord::next);
    CHECK(log_order("finish 2").word == LogWord::finish);
    CHECK(log_order("finish 2").number == 2);
    CHECK(log_order("finish MT").method == Exam::MT);
    CHECK_THROWS_AS(log_order("finish off"), InputError);
}

TEST_CASE("a find is corrected by its number and the line as it should be") {
    const LogOrder order = log_order("correct #3 porosity 0.02 at 3 in");
    CHECK(order.word == LogWord::correct);
    CHECK(order.number == 3);
    CHECK(order.of == "porosity 0.02 at 3 in");
    for (const char *line : {"correct", "correct 3", "correct porosity 0.02 at 3 in"})
        CHECK_THROWS_AS(log_order(line), InputError);
}

TEST_CASE("methods alone are of the lines that follow, and the first one of those that name none") {
    for (const char *line : {"VT MT", "vt,mt", "VT, MT VT"}) {
        INFO(line);
        const LogOrder order = log_order(line);
        CHECK(order.word == LogWord::by);
        CHECK(order.method == Exam::VT);
        CHECK(order.methods == std::vector<Exam>{Exam::VT, Exam::MT});
    }
    CHECK(log_order("VT crack 0.2 at 3").word == LogWord::none);
}

TEST_CASE("a find is moved and withdrawn by its number, where it belongs and why") {
    const LogOrder gone = log_order("withdraw #3 a scratch of the brush");
    CHECK(gone.word == LogWord::withdraw);
    CHECK(gone.number == 3);
    CHECK(gone.why == "a scratch of the brush");
    const LogOrder within = log_order("move 3 PT found by the PT");
    CHECK(within.word == LogWord::move);
    CHECK(within.find == 3);
    CHECK(within.method == Exam::PT);
    CHECK(within.of.empty());
    CHECK(within.why == "found by the PT");
    CHECK(log_order("move 3 2 found by it").number == 2);
    const LogOrder over = log_order("move 3 to T-8 the films were mixed up");
    CHECK(over.of == "T-8");
    CHECK_FALSE(over.method);
    CHECK(over.number == 0);
    CHECK(over.why == "the films were mixed up");
    CHECK(log_order("move 3 to T-8 2 mixed up").number == 2);
    CHECK(log_order("move 3 to T-8 RT mixed up").method == Exam::RT);
    for (const char *line : {"withdraw", "withdraw 3", "withdraw a scratch", "move", "move 3", "move 3 PT",
                             "move 3 T-8 mixed up", "move 3 to T-8", "move PT 3 why"})
        CHECK_THROWS_AS(log_order(line), InputError);
}

TEST_CASE("a finished exam is opened again for a reason, by its method or number where one is named") {
    const LogOrder own = log_order("reopen one more find under the light");
    CHECK(own.word == LogWord::reopen);
    CHECK(own.number == 0);
    CHECK_FALSE(own.method);
    CHECK(own.why == "one more find under the light");
    const LogOrder by_method = log_order("Reopen MT one was missed");
    CHECK(by_method.method == Exam::MT);
    CHECK(by_method.why == "one was missed");
    CHECK(log_order("reopen 2 one was missed").number == 2);
    for (const char *line : {"reopen", "reopen MT", "reopen 2"}) CHECK_THROWS_AS(log_order(line), InputError);
}
