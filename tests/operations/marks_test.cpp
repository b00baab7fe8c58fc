#include "operations/marks.hpp"

#include "catch.hpp"
#include "measure/refusal.hpp"

using namespace beadbook;

TEST_CASE("a word means one mark, a series, or several of these") {
    using Marks = std::vector<std::string>;
    CHECK(marks_in("T-1") == Marks{"T-1"});
    CHECK(marks_in("T-8..T-11") == Marks{"T-8", "T-9", "T-10", "T-11"});
    CHECK(marks_in("T-8..10") == Marks{"T-8", "T-9", "T-10"});
    CHECK(marks_in("A08..A10") == Marks{"A08", "A09", "A10"});
    CHECK(marks_in("T-1, T-3..4,x") == Marks{"T-1", "T-3", "T-4", "x"});
    for (const char *bad : {"T..T-3", "T-3..T-1", "T-1..U-3", "T-1..T-1001", "T-1,T-1", "T-1..T-3,T-2"}) {
        INFO(bad);
        CHECK_THROWS_AS(marks_in(bad), Refusal);
    }
    CHECK(marks_in("T-1..T-1000").size() == 1000);
}

TEST_CASE("marks that differ only in capitals and leading zeros are alike") {
    for (const char *mark : {"K-1", "k-1", "K-01", "k-001"}) CHECK(plain_mark(mark) == "k-1");
    for (const char *mark : {"K-10", "K1", "K-0", "K-1a", "K-100"}) CHECK(plain_mark(mark) != "k-1");
    CHECK(plain_mark("K-100") == "k-100");
    CHECK(plain_mark("007b00") == "7b0");
    CHECK(plain_mark("0") == "0");
}

TEST_CASE("a series goes on, and is told short") {
    CHECK(next_mark("T-9") == "T-10");
    CHECK(next_mark("A09") == "A10");
    CHECK(next_mark("A099") == "A100");
    CHECK(next_mark("cap").empty());
    CHECK(marks_text({"T-1", "T-2", "T-3"}) == "T-1 to T-3");
    CHECK(marks_text({"T-1", "T-2"}) == "T-1 and T-2");
    CHECK(marks_text({"T-1", "T-3", "T-4"}) == "T-1, T-3 and T-4");
}

TEST_CASE("marks that a reader takes for one another have one look in common") {
    for (const char *mark : {"G-1", "G1", "g-01", "G-O1", "G_1", "G.1", "G-1."})
        CHECK(seen_mark(mark) == "g1");
    CHECK(seen_mark("1-11") != seen_mark("11-1"));
    for (const char *other : {"P-I", "Pl", "p-l", "P-|"}) CHECK(seen_alike("P-1", other));
    CHECK(seen_alike("Y-l4", "Y-14"));
    CHECK(seen_alike("Y-1B2", "Y-182"));
    CHECK_FALSE(seen_alike("T-1B", "T-18"));
    CHECK(seen_mark("CO-1") != seen_mark("C-1"));
}

TEST_CASE("capitals, zeros, blanks, points and look-alike letters tell no two marks apart") {
    for (const char *other : {"l1", "L 1", "L01", "L1.", "L-1", "\xEF\xBC\xAC\x31"})
        CHECK(seen_alike("L1", other));
    CHECK(seen_alike("L10", "L1O"));
    CHECK(seen_alike("M1", "\xD0\x9C\x31")); // of another alphabet
    CHECK(seen_alike("UV 1", "UV-1"));
    for (const char *other : {"L2", "L11", "L10", "M1", "", "-"}) CHECK_FALSE(seen_alike("L1", other));
    CHECK_FALSE(seen_alike("-", ".."));
}

TEST_CASE("a mark that another was meant by says why") {
    CHECK(odd_mark("G-2.") == "it ends with '.'");
    CHECK(odd_mark("P-7-P-9") == "is it a series, P-7..P-9?");
    for (const char *mark : {"G-2", "T-1-1", "2026-11-05", "A-1-B-1", "K"}) CHECK(odd_mark(mark).empty());
}
