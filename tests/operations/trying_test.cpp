#include "operations/trying.hpp"

#include "catch.hpp"
#include "operations/desk.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

const std::string head = "set: mil-hdbk-1890-table-3\ncoupon: {magnetic: yes, joint: groove, material: "
                         "steel, process: GTAW}\ncases:\n";

TriedCases tried(Desk &desk, const std::string &cases) {
    return try_cases(desk.catalogue, {"mine", head + cases});
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
        desk, head + "  - {id: P, finds: [gas pore 0.055, RT gas pore x], expect: {4: reject, 1: maybe}, "
                     "decided by: magic, source: s, coupon: {thickness: 3}}\n"
                     "  - {id: P, expect: {1: accept}, exams: [XT]}\n");
    for (const char *one : {"does not begin with the method", "'x' is not understood", "'4'",
                            "'maybe' is no verdict", "'magic' is no rule of", "a case above has the same id",
                            "'XT' is no method", "cases.P: 'source' is missing"})
        CHECK_THAT(mistakes, says(one));
}
