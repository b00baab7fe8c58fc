// One value that a standard prints in two units: the one in the unit of the work counts, or, where that is
// not fixed, whichever is met.
#include "case.hpp"
#include "catch.hpp"
#include "technique/exam_check.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// The verdict of class A on a rounded indication of that size, on a coupon measured in `unit`.
std::string verdict(const std::string &limit, std::optional<Unit> unit, const std::string &size,
                    const std::string &compare = "at most") {
    const auto set = set_from(head() + "rules:\n  - {id: r, types: any, exams: PT, measure: size, " +
                              compare + ": " + limit + ", clause: c, standing: {house: x}}\n");
    JudgedCase c = judged(set, {"thickness=1/4in", {"PT ri " + size}});
    c.coupon.values.measure_in(unit);
    c.judgement = judge(*set, c.coupon, c.exams, c.indications);
    return std::string(name_of(c.judgement.classes[0].verdict));
}

} // namespace

TEST_CASE("the twin in the unit of the work counts, to the nanometre") {
    const std::string limit = "1/16 in or 1.6 mm"; // 1.5875 mm and 1.6 mm
    CHECK(verdict(limit, Unit::inch, "1.5875 mm") == "accept");
    CHECK(verdict(limit, Unit::inch, "1.587501 mm") == "reject");
    CHECK(verdict(limit, Unit::millimetre, "1.6 mm") == "accept");
    CHECK(verdict(limit, Unit::millimetre, "1.600001 mm") == "reject");
    CHECK(verdict("1.6 mm or 1/16 in", Unit::inch, "1.587501 mm") == "reject"); // the order says nothing
    CHECK(verdict("1.6 mm or 1/16 in", Unit::millimetre, "1.6 mm") == "accept");
}

TEST_CASE("without a unit either twin counts, of a maximum and of a minimum") {
    CHECK(verdict("1/16 in or 1.6 mm", {}, "1.6 mm") == "accept");
    CHECK(verdict("1/16 in or 1.6 mm", {}, "1.600001 mm") == "reject");
    CHECK(verdict("1/16 in or 1.5 mm", {}, "1.5875 mm") == "accept");
    CHECK(verdict("1/16 in or 1.6 mm", {}, "1.5875 mm", "at least") == "accept");
    CHECK(verdict("1/16 in or 1.6 mm", {}, "1.587499 mm", "at least") == "reject");
    CHECK(verdict("1/16 in or 1.6 mm", {}, "1.6 mm", "under") == "reject");
    CHECK(verdict("1/16 in or 1.6 mm", {}, "1.599999 mm", "under") == "accept");
}

TEST_CASE("a twin inside a formula is of one unit throughout") {
    const std::string sum = "10 % x T + 0.03 in or 1 mm"; // T = 6.35 mm: 0.635 + 0.762, or + 1
    CHECK(verdict(sum, Unit::inch, "1.397 mm") == "accept");
    CHECK(verdict(sum, Unit::inch, "1.397001 mm") == "reject");
    CHECK(verdict(sum, Unit::millimetre, "1.635 mm") == "accept");
    CHECK(verdict(sum, Unit::millimetre, "1.635001 mm") == "reject");
    // Less of a larger one is a smaller limit: without a unit the formula is read as a whole.
    CHECK(verdict("T - 0.03 in or 1 mm", {}, "5.588 mm") == "accept");
    CHECK(verdict("T - 0.03 in or 1 mm", {}, "5.588001 mm") == "reject");
}

TEST_CASE("a reason prints the twin that was used, and both as they are printed") {
    const auto set =
        set_from(head() + "rules:\n  - {id: r, types: any, exams: PT, measure: size, at most: 1/16 in or "
                          "1.6 mm, clause: c, standing: {house: x}}\n");
    CHECK(
        judged(set, {"units=mm", {"PT ri 2 mm"}}).sentences("A") ==
        "#1 rounded indication (PT): size 0.0787 in, limit 0.063 in (1/16 in or 1.6 mm, mm counts): over by "
        "0.0157 in.\n");
    CHECK_THAT(judged(set, {"units=in", {"PT ri 2 mm"}}).sentences("A"),
               says("limit 0.0625 in (1/16 in or 1.6 mm, in counts)"));
}

TEST_CASE("twins of any dimension, in a practice and in rules for welders") {
    const auto valid = [](const std::string &must, const std::string &name, const std::string &value) {
        const auto loaded =
            load_practice("practice: p\ntitle: t\nedition: e\nmethod: MT\nrules:\n  - {id: a, clause: c, "
                          "standing: {house: x}, must: '" +
                          must + "'}\n");
        INFO((loaded.issues.empty() ? "" : loaded.issues.front().text));
        REQUIRE(loaded.practice);
        return check_exam(*loaded.practice, {{name, value}}, parse_day("2026-11-25"), {}).valid;
    };
    // 30 lb are 13.608 kg, 100 fc are 1076.39 lx.
    CHECK(valid("lift at least 30 lb or 13.5 kg", "lift", "13.5 kg") == Truth::yes);
    CHECK(valid("lift at least 30 lb or 13.5 kg", "lift", "13.499 kg") == Truth::no);
    CHECK(valid("lift at least 30 lb or 13.5 kg", "lift", "30 lb") == Truth::yes);
    CHECK(valid("light at least 100 fc or 1076 lx", "light", "1076 lx") == Truth::yes);
    CHECK(valid("light at least 100 fc or 1076 lx", "light", "1075 lx") == Truth::no);
    CHECK(valid("temperature from 40 F or 5 C to 125 F or 52 C", "temperature", "40 F") == Truth::yes);
    CHECK(valid("temperature from 40 F or 5 C to 125 F or 52 C", "temperature", "39 F") == Truth::no);
    CHECK(valid("temperature from 40 F or 5 C to 125 F or 52 C", "temperature", "52 C") == Truth::yes);
    CHECK(valid("temperature from 40 F or 5 C to 125 F or 52 C", "temperature", "126 F") == Truth::no);
}
