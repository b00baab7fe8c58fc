#include "catch.hpp"
#include "operations/reading.hpp"

#include "desk.hpp"

#include <algorithm>

using namespace beadbook;
using namespace beadbook::test;

TEST_CASE("all that is shipped is listed, in order, and loads") {
    Desk desk;
    const auto names = [](const auto &all) {
        std::vector<std::string> out;
        for (const auto &one : all) out.push_back(one->name);
        return out;
    };
    for (const auto &list : {names(all_criteria(desk.catalogue)), names(all_rules(desk.catalogue)),
                             names(all_practices(desk.catalogue))}) {
        CHECK(list.size() > 3);
        CHECK(std::is_sorted(list.begin(), list.end()));
    }
}

TEST_CASE("a check reads a shipped one by name, a file by its path, and text that came another way") {
    Desk desk;
    CHECK(check_criteria(desk.catalogue, {"iso-5817"}).value);
    CHECK(check_rules(desk.catalogue, {"asme-ix"}).value);
    CHECK(check_practice(desk.catalogue, {"asme-v-pt"}).value);
    const std::string text = check_practice(desk.catalogue, {"asme-v-pt"}).text;
    write_file(desk.file("mine.txt"), text);
    CHECK(check_practice(desk.catalogue, {desk.file("mine.txt")}).value);
    CHECK(check_practice(desk.catalogue, {"asme-v-pt", "practice: other\n"}).issues.size() > 1);
    CHECK_THROWS_WITH(check_rules(desk.catalogue, {desk.file("none.yaml")}), says("cannot be read"));
    CHECK_THROWS_AS(check_rules(desk.catalogue, {"asme-v-pt"}), DataError); // no rules of that name
}

TEST_CASE("mistakes are the answer of a check, all of them and with their places") {
    Desk desk;
    const std::string text = "rules: x\ntitel: X\nunits: feet\n";
    const auto checked = check_rules(desk.catalogue, {"typed", text});
    CHECK_FALSE(checked.value);
    CHECK(checked.text == text);
    std::string all;
    for (const auto &issue : checked.issues) all += print(issue, checked.name, checked.text);
    CHECK_THAT(all, says("typed:2:1"));
    CHECK_THAT(all, says("expected in or mm"));
}

TEST_CASE("coverage names the types that no rule of a set speaks of") {
    Desk desk;
    const std::string text = "set: s\ntitle: t\nedition: e\nunits: in\nclasses: [A]\nrules:\n"
                             "  - {id: r, types: porosity, exams: RT, allowed: none, clause: c, standing: "
                             "{house: x}}\n";
    CHECK_FALSE(check_criteria(desk.catalogue, {"typed", text}).coverage);
    const auto checked = check_criteria(desk.catalogue, {"typed", text}, true);
    REQUIRE(checked.coverage);
    std::vector<std::string> by_film;
    for (const auto &one : *checked.coverage)
        if (one.exam == Exam::RT) by_film = one.types;
    CHECK(std::count(by_film.begin(), by_film.end(), "crack") == 1);
    CHECK(std::count(by_film.begin(), by_film.end(), "porosity") == 0);
}

TEST_CASE("words for imperfections and technique conditions are listed") {
    CHECK(imperfection_types().find("crack"));
    const auto &all = known_conditions();
    CHECK(std::any_of(all.begin(), all.end(), [](const auto &one) { return one.name == "light"; }));
}

TEST_CASE("a check tells of a set that has a built-in one's name and says something else") {
    Desk desk;
    const std::string text = check_criteria(desk.catalogue, {"iso-23277"}).text;
    CHECK(check_criteria(desk.catalogue, {"mine.yaml", text}).issues.empty());
    const auto other = check_criteria(desk.catalogue, {"mine.yaml", text + "# changed\n"});
    REQUIRE(other.value);
    REQUIRE(other.issues.size() == 1);
    CHECK(other.issues[0].severity == Severity::warning);
    CHECK_THAT(other.issues[0].text, says("iso-23277 is built in and says something else"));
}
