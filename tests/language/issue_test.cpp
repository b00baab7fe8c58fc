#include "catch.hpp"
#include "criteria/load.hpp"

using namespace beadbook;

TEST_CASE("what is said of many places is told once, with the places") {
    Issues issues;
    for (int line = 1; line <= 12; ++line) issues.error({line, 5}, "p" + std::to_string(line), "the same");
    issues.error({2, 1}, "q", "another");
    issues.sort_by_place();
    const auto once = told_once(issues.all());
    REQUIRE(once.size() == 2);
    CHECK(once[0].also.size() == 11);
    CHECK_THAT(print(once[0], "f.yaml", ""),
               says("f.yaml:1:5") && says("also at 2:5, 3:5") && says("9:5 and 3 more places"));
    CHECK_THAT(print(once[1], "f.yaml", ""), !says("also at"));
}

TEST_CASE("what is said of many parts at one place is told once, with the parts") {
    Issues issues;
    for (int i = 1; i <= 10; ++i) issues.error({5, 10}, "rules.r" + std::to_string(i), "the same");
    const auto once = told_once(issues.all());
    REQUIRE(once.size() == 1);
    CHECK(once[0].also.empty());
    CHECK_THAT(print(once[0], "f.yaml", ""), says("rules.r1: the same") &&
                                                 says("also of rules.r2, rules.r3") &&
                                                 says("rules.r9 and 1 more parts") && !says("also at"));
}

TEST_CASE("what follows from a part that cannot be read is left out") {
    Issues issues;
    issues.error({3, 4}, "p", "cause");
    issues.spoil({3, 2}, 4);
    issues.error({3, 1}, "p", "before");
    issues.error({4, 9}, "p", "follows");
    issues.error({5, 1}, "p", "behind");
    REQUIRE(issues.all().size() == 3);
}

TEST_CASE("a key typed wrong, a class list as a map and a division by zero are one mistake each") {
    const auto mistakes = [](const std::string &classes, const std::string &limit) {
        std::string out;
        for (const auto &issue :
             load_criteria(
                 "set: s\ntitle: t\nedition: e\nunits: in\nclasses: " + classes +
                 "\nquantities: {T: thinner member}\nrules:\n  - {id: r, types: porosity, exams: RT, "
                 "measure: size, " +
                 limit + ", clause: c, standing: {house: x}}\n")
                 .issues)
            if (issue.severity == Severity::error) out += issue.text + "\n";
        return out;
    };
    CHECK(mistakes("[A]", "at most: T") == "");
    CHECK_THAT(mistakes("[A]", "at mots: T"), says("did you mean 'at most'?") && !says("is missing"));
    CHECK_THAT(mistakes("{A: x}", "at most: {A: T}"),
               says("expected a list of classes") && !says("there is no class"));
    CHECK_THAT(mistakes("A", "at most: {A: T}"),
               says("expected a list of classes") && !says("there is no class"));
    CHECK(mistakes("[A]", "at most: T / 0") == "divides by zero\n");
    CHECK(mistakes("[A, A]", "at most: {A: T, B: T}") == "class 'A' stands here twice\n");
    CHECK(mistakes("[A, B]", "at most: {A: T, A: T}") == "key 'A' stands here a second time\n");
    CHECK(mistakes("[A, B]", "at most: {A: T, C: T}") == "there is no class 'C'; expected A or B\n");
    CHECK_THAT(mistakes("[A, B, C]", "at most: {A: T, D: T}"),
               says("no class 'D'") && says("'B' is missing") && says("'C' is missing"));
}

TEST_CASE("a key typed wrong is read as the one that is meant, so that it is one mistake") {
    const std::string text =
        "set: s\ntitle: t\nedition: e\nunits: mm\nclasses: [A, B]\n"
        "quantities: {T: thinner member}\nformulas: {most: T / 4}\n"
        "scope:\n  - {id: p0, when: T from 5 mm to 20 mm, clause: c, standing: {house: x}}\n"
        "required exams: [{id: done, one of: RT, clause: c, standing: {house: x}}]\n"
        "rules:\n"
        "  - {id: r, types: porosity, exams: RT, measure: count, window: 9 mm, at most: 3, "
        "clause: c, standing: {house: x}}\n"
        "  - {id: s, types: porosity, exams: RT, measure: sum of size, linked: gap under 1 mm, "
        "least group: 3, at most: most, clause: c, standing: {house: x}}\n"
        "  - {id: g, types: porosity, exams: RT, measure: gap, at least: most, clause: c, "
        "standing: {house: x}}\n"
        "  - {id: c, combine: [r, s], borderline: 90 %, at most: 1, clause: c, "
        "standing: {house: x}}\n";
    CHECK_FALSE(load_criteria(text).set == nullptr);
    for (const char *key : {"units:", "classes:", "quantities:", "formulas:", "scope:", "when:", "exams:",
                            "measure:", "window:", "linked:", "least group:", "at most:", "at least:",
                            "combine:", "borderline:", "clause:", "standing:"}) {
        std::string typed = text;
        const std::size_t colon = typed.find(key) + std::string(key).size() - 1;
        typed.insert(colon, "s");
        std::string errors;
        std::size_t count = 0;
        for (const auto &issue : load_criteria(typed).issues)
            if (issue.severity == Severity::error) {
                errors += issue.text + "\n";
                ++count;
            }
        INFO(key << "\n" << errors);
        CHECK(count == 1);
    }
}
