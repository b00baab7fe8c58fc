#include "operations/trying.hpp"

#include "catch.hpp"
#include "operations/desk.hpp"

#include <filesystem>

using namespace beadbook;
using namespace beadbook::test;

namespace {

const std::string trial_head = "set: mil-hdbk-1890-table-3\ncoupon: {magnetic: yes, joint: groove, material: "
                               "steel, process: GTAW}\ncases:\n";

TriedCases tried(Desk &desk, const std::string &cases) {
    return try_cases(desk.catalogue, {"mine", trial_head + cases});
}

std::string why_not(Desk &desk, const std::string &text) {
    try {
        try_cases(desk.catalogue, {"mine", text});
    } catch (const DataError &e) {
        return e.what();
    }
    return "";
}

} // namespace

TEST_CASE("every shipped case holds", "[published]") {
    Desk desk;
    for (const auto &tried : try_all_cases(desk.catalogue))
        for (const auto &one : tried.cases) {
            INFO(tried.set->name << " " << one.worked.id << ": " << one.worked.source);
            CHECK(one.holds());
        }
}

TEST_CASE("a case holds by its verdicts and by the rule that decides") {
    Desk desk;
    const std::string pore = "  - id: P\n    coupon: {thickness: 0.150 in}\n    finds: [RT gas pore 0.055]\n"
                             "    source: as printed\n";
    // 0.055 in is over T/3 = 0.050 in of class 1: MIL-HDBK-1890(AT) Table III, page 11, read.
    CHECK(tried(desk, pore + "    expect: {1: reject, 2: accept}\n    decided by: pore-size\n").failed() ==
          0);
    const TriedCases other = tried(desk, pore + "    expect: {1: accept, 2: accept}\n");
    CHECK(other.failed() == 1);
    CHECK(other.cases[0].classes == std::vector<std::string>{"1"});
    const TriedCases rule = tried(desk, pore + "    expect: {1: reject}\n    decided by: pore-gap\n");
    CHECK(rule.failed() == 1);
    CHECK(rule.cases[0].other_rule);
    // An exam that was not done keeps it open.
    CHECK(tried(desk, pore + "    exams: [VT]\n    expect: {2: cannot say}\n").failed() == 0);
}

TEST_CASE("cases tell which rule never decided and which limit was tried from one side") {
    Desk desk;
    const TriedCases tried =
        ::tried(desk, "  - {id: P, coupon: {thickness: 0.150 in}, finds: [RT gas pore 0.055], "
                      "expect: {1: reject}, source: s}\n");
    const auto never = [&](const std::string &id) {
        return std::count(tried.never_decisive.begin(), tried.never_decisive.end(), id) == 1;
    };
    CHECK_FALSE(never("pore-size"));
    CHECK(never("crack"));
    const auto sides = [&](const std::string &class_id) {
        for (const auto &one : tried.untried)
            if (one.rule == "pore-size" && one.class_id == class_id)
                return std::string(one.within ? "within" : one.over ? "over" : "none");
        return std::string("both");
    };
    CHECK(sides("1") == "over");
    CHECK(sides("2") == "within");
}

TEST_CASE("mistakes in a case file are all named, with their places") {
    Desk desk;
    CHECK_THAT(why_not(desk, "set: nothing-of-ours\ncases: []\n"),
               says("mine:1:6: error: set: there is no criteria set"));
    const std::string mistakes = why_not(
        desk, trial_head +
                  "  - {id: P, finds: [gas pore 0.055, RT gas pore x], expect: {4: reject, 1: maybe}, "
                  "decided by: magic, source: s, coupon: {thickness: 3}}\n"
                  "  - {id: P, expect: {1: accept}, exams: [XT]}\n");
    for (const char *one : {"does not begin with the method", "'x' is not understood", "'4'",
                            "'maybe' is no verdict", "'magic' is no rule of", "a case above has the same id",
                            "'XT' is no method", "cases.P: 'source' is missing"})
        CHECK_THAT(mistakes, says(one));
}

TEST_CASE("cases find a set of one's own beside their file, with and without its ending") {
    Desk desk;
    const std::string set = "set: our-shop\ntitle: t\nedition: e\nunits: in\nclasses: [A]\nrules:\n"
                            "  - {id: r, types: porosity, exams: VT, measure: size, at most: 1/16 in, "
                            "clause: c, standing: {house: x}}\n";
    write_file(desk.file("our-shop.yaml"), set);
    for (const char *name : {"our-shop", "our-shop.yaml"}) {
        write_file(desk.file("mine.yaml"),
                   "set: " + std::string(name) +
                       "\ncases:\n  - {id: one, finds: VT gas pore 0.1 at 1, expect: {A: "
                       "reject}, source: s}\n");
        const TriedCases tried = try_cases(desk.catalogue, {desk.file("mine.yaml")});
        REQUIRE(tried.cases.size() == 1);
        CHECK(tried.failed() == 0);
        CHECK_FALSE(tried.cases[0].worked.exams_said);
    }
    // The set itself is no file of cases, and that is the one thing said.
    try {
        try_cases(desk.catalogue, {desk.file("our-shop.yaml")});
        FAIL("a set was taken as cases");
    } catch (const DataError &e) {
        CHECK_THAT(e.what(), says("is a criteria set; expected a file of worked cases"));
        CHECK_THAT(e.what(), !says("unknown"));
    }
}

TEST_CASE("cases that bear the name of their set do not take themselves for it") {
    Desk desk;
    write_file(desk.file("fab.yaml"),
               "set: fab\ntitle: t\nedition: e\nunits: in\nclasses: [A]\nrules:\n  - {id: r, types: "
               "porosity, exams: "
               "VT, measure: size, at most: 1/16 in, clause: c, standing: {house: x}}\n");
    std::filesystem::create_directory(desk.file("cases"));
    write_file(
        desk.file("cases/fab.yaml"),
        "set: fab\ncases:\n  - {id: one, finds: VT gas pore 0.1 at 1, expect: {A: reject}, source: s}\n");
    const TriedCases tried = try_cases(desk.catalogue, {desk.file("cases/fab.yaml")});
    CHECK(tried.set->name == "fab");
    CHECK(tried.failed() == 0);
}

TEST_CASE("a full weld in a case is as thick as the thinner member, and what all share is told of once") {
    Desk desk;
    const std::string set = "set: mil-hdbk-1890-table-3\n";
    const std::string cases = "cases:\n  - {id: a, expect: {1: cannot say}, source: s}\n"
                              "  - {id: b, expect: {1: cannot say}, source: s}\n";
    const TriedCases full = try_cases(
        desk.catalogue, {"mine", set + "coupon: {thickness: 0.150 in, weld-thickness: full}\n" + cases});
    CHECK(full.cases[0].worked.coupon.get("weld-thickness") == full.cases[0].worked.coupon.get("thickness"));
    const std::string mistakes = why_not(desk, set + "coupon: {thickness: thick}\n" + cases);
    const std::size_t first = mistakes.find("error:");
    CHECK(first != std::string::npos);
    CHECK(mistakes.find("error:", first + 1) == std::string::npos);
}
