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
