#include "catch.hpp"
#include "terminal/line_editor.hpp"

using namespace beadbook;

TEST_CASE("words are completed as far as they are the same") {
    CHECK(shared_beginning({}).empty());
    CHECK(shared_beginning({"fusion"}) == "fusion");
    CHECK(shared_beginning({"from", "front", "fro"}) == "fro");
    CHECK(shared_beginning({"at", "to"}).empty());
}
