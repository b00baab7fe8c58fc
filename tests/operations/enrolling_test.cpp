#include "operations/enrolling.hpp"

#include "catch.hpp"
#include "desk.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::vector<WelderRecord> enrolled(Desk &desk, const std::string &text) {
    return desk.write([&](Writing &w) { return enrol_all(w, {text, "class.csv"}); }).value;
}
std::string why_not_enrolled(Desk &desk, const std::string &text) {
    const auto before = desk.book.welders();
    try {
        enrolled(desk, text);
    } catch (const Refusal &e) {
        CHECK(desk.book.welders() == before);
        return e.what();
    }
    return "taken";
}

} // namespace

TEST_CASE("a table enrols its welders in its order") {
    Desk desk;
    const auto all = enrolled(desk, "name,mark\r\n\"Reef, J.\",L2\r\n,L10\r\n \r\n");
    REQUIRE(all.size() == 2);
    CHECK(all[0] == WelderRecord{"L2", "Reef, J.", "", ""});
    CHECK(desk.book.welders() == std::vector<std::string>{"L2", "L10"});
    enrolled(desk, "mark,employer,note\nL3,the yard,left-handed\n");
    CHECK(desk.book.welder("L3").record == WelderRecord{"L3", "", "the yard", "left-handed"});
    CHECK(enrolled(desk, "Mark,NAME\nL4,Quay\n").front() == WelderRecord{"L4", "Quay", "", ""});
}

TEST_CASE("a table whose cells are parted by semicolons or tabs is read, and says so") {
    Desk desk;
    const auto done = desk.write([&](Writing &w) {
        return enrol_all(w, {"mark;name\nL1;\"Reef; J.\"\n", "class.csv"});
    });
    REQUIRE(done.value.size() == 1);
    CHECK(done.value[0] == WelderRecord{"L1", "Reef; J.", "", ""});
    REQUIRE(done.notes.size() == 1);
    CHECK_THAT(done.notes[0], says("class.csv: its cells are read as parted by semicolons"));
    CHECK(enrolled(desk, "mark\tname\nL2\tB\n").front() == WelderRecord{"L2", "B", "", ""});
    // With a comma in the first line it is a table of commas, whatever else stands there.
    CHECK_THAT(why_not_enrolled(desk, "mark;name,note\nL3;A,x\n"), says("unknown column 'mark;name'"));
}

TEST_CASE("one bad row of welders enrols nobody, and every bad row is named") {
    Desk desk;
    enrolled(desk, "mark\nL1\n");
    const std::string said =
        why_not_enrolled(desk, "mark,name\nL1,A\nL2,B\nL 3,C\n,D\nL2,E\nL4,F,G\nL5,\"two\nlines\"\nL6,H\n");
    CHECK_THAT(said, says("6 rows cannot be taken, nothing was stored:"));
    CHECK_THAT(said, says("\nclass.csv: row 2: welder L1 is registered already; leave the row out"));
    CHECK_THAT(said, says("\nclass.csv: row 4: welder 'L 3': a welder's mark is 1 to 40 letters"));
    CHECK_THAT(said, says("\nclass.csv: row 5: there is no mark"));
    CHECK_THAT(said, says("\nclass.csv: row 6: welder L2 stands above already"));
    CHECK_THAT(said, says("\nclass.csv: row 7: 3 cells, and 2 columns"));
    CHECK_THAT(said, says("\nclass.csv: row 8: name: ") && says("control character"));
}

TEST_CASE("a table of welders tells what its first row must hold") {
    Desk desk;
    CHECK_THAT(why_not_enrolled(desk, ""), says("it is empty; the first row names the columns"));
    CHECK_THAT(why_not_enrolled(desk, "name\nReef\n"), says("there is no column 'mark'"));
    CHECK_THAT(why_not_enrolled(desk, "mark,nmae\nL1,x\n"),
               says("unknown column 'nmae'") && says("did you mean 'name'?"));
    CHECK_THAT(why_not_enrolled(desk, "mark,mark\nL1,L2\n"), says("stands twice"));
    CHECK_THAT(why_not_enrolled(desk, "mark\n"), says("there is no welder below the first row"));
}
