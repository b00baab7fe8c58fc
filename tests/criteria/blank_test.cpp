// Blanks of a set: how they are read, what is refused, and what filling and confirming does to a set.
#include "case.hpp"
#include "catch.hpp"
#include "criteria/owners_copy.hpp"
#include "criteria/shipped.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

const std::string blanks = R"(
blanks:
  - {id: pore, limits: size of one pore, kind: length, plausible: over 0 in to 1/4 in, clause: "Table 1"}
  - {id: share, limits: size of one pore as a share of T, kind: number, clause: "Table 1"}
  - {id: sum, limits: sum of pores, kind: length, clause: "Table 2"}
  - {id: stretch, limits: where they are summed, kind: length, clause: "Table 2"}
)";
const std::string rules = R"(
tables:
  by-thickness:
    by: T
    rows:
      up to 1 in: blank pore
      over 1 in: 2 x blank pore
rules:
  - {id: size, types: porosity, exams: RT, measure: size, at most: {A: lesser of blank share x T and blank pore, B: 1/8 in}, clause: "1", standing: {house: x}}
  - {id: sums, types: porosity, exams: RT, measure: sum of size, window: blank stretch, at most: {A: blank sum, B: no limit}, clause: "2", standing: {house: x}}
  - {id: slag, types: inclusion, exams: RT, measure: length, at most: table by-thickness, clause: "3", standing: {house: x}}
)";

std::string told(const std::string &text) {
    std::string out;
    for (const auto &issue : load_criteria(text).issues)
        if (issue.severity == Severity::error) out += print(issue, "set.yaml", text);
    return out;
}

Filling filling(const std::string &blank, const std::string &class_id, const Exact &value) {
    return {blank, class_id, value, "", "A. Field and B. Reed (page 21 of it)"};
}
constexpr std::int64_t thou = nm_per_inch / 1000;

} // namespace

TEST_CASE("blanks are read with the classes that hang on them") {
    const auto set = set_from(head() + blanks + rules);
    REQUIRE(set->blanks.size() == 4);
    CHECK(set->blanks[0].classes == std::vector<bool>{true, true}); // by the table in class B
    CHECK(set->blanks[1].classes == std::vector<bool>{true, false});
    CHECK(set->blanks[2].classes == std::vector<bool>{true, false});
    CHECK(set->rules[0].standings[0].kind == Standing::Kind::blank);
    CHECK(set->rules[0].standings[1].kind == Standing::Kind::house);
    CHECK(authority("1", set->rules[0].standings[0]) == "1, blank");
}

TEST_CASE("a mistake about a blank is told where it stands") {
    const auto with = [&](const std::string &from, const std::string &to) {
        std::string text = head() + blanks + rules;
        const std::size_t at = text.find(from);
        REQUIRE(at != std::string::npos);
        return told(text.replace(at, from.size(), to));
    };
    CHECK_THAT(with("lesser of blank share", "lesser of blank shore"),
               says("there is no blank 'shore'; did you mean 'share'?"));
    CHECK_THAT(with("kind: number", "kind: numbers"),
               says("found 'numbers'; expected length, area, angle, count"));
    CHECK_THAT(with("id: share", "id: pore"), says("a blank above has the same id"));
    CHECK_THAT(with("id: share", "id: Share"), says("small letters, digits and dashes"));
    CHECK_THAT(with("plausible: over 0 in to 1/4 in", "plausible: over 0 in2"), says("plausible"));
    CHECK_THAT(with("plausible: over 0 in to 1/4 in", "plausible: over 1/4 in to 1/8 in"),
               says("'over 1/4 in to 1/8 in' holds no number"));
    CHECK_THAT(with("lesser of blank share x T and blank pore", "blank share"),
               says("the limit is a number but the measure is a length"));
    CHECK_THAT(with("exams: RT, measure: size", "exams: RT, where: size over blank pore, measure: size"),
               says("speaks of a blank; only limits and windows may"));
    CHECK_THAT(with("exams: RT, measure: size", "exams: RT, when: T over blank pore, measure: size"),
               says("speaks of a blank; only limits and windows may"));
    CHECK_THAT(with("measure: sum of size, window: blank stretch",
                    "measure: sum of size, linked: gap under blank pore"),
               says("speaks of a blank; only limits and windows may"));
}

TEST_CASE("an open blank keeps open what it would decide, and names itself") {
    const auto set = set_from(head() + blanks + rules);
    const std::string coupon = "joint=groove material=steel thickness=1/2in weld-length=8in";
    const auto found = judged(set, {coupon, {"RT gas pore 0.010 at 1"}});
    CHECK(found.verdicts() == "A cannot say, B accept");
    CHECK_THAT(found.sentences("A"), says("blank pore of class A (Table 1: size of one pore)") &&
                                         says("blank stretch of class A (Table 2: where they are summed)"));
    CHECK(judged(set, {coupon, {"RT slag inclusion 0.010 at 1"}}).verdicts() == "A cannot say, B cannot say");
    CHECK(judged(set, {coupon, {}}).verdicts() == "A accept, B accept");
}

TEST_CASE("a filled blank is a limit like another, to the nanometre, and says by whom") {
    const auto set = set_from(head() + blanks + rules);
    const auto full = with_owners_copy(
        set, {{filling("pore", "A", Exact(60 * thou)), filling("share", "A", Exact::fraction(1, 4)),
               filling("sum", "A", Exact(100 * thou)), filling("stretch", "A", Exact(nm_per_inch)),
               filling("pore", "B", Exact(90 * thou))},
              {}});
    const std::string coupon = "joint=groove material=steel thickness=1/2in weld-length=8in";
    const auto verdicts = [&](const std::vector<std::string> &log) {
        return judged(full, {coupon, log}).verdicts();
    };
    CHECK(verdicts({"RT gas pore 0.060 at 1"}) == "A accept, B accept");
    CHECK(verdicts({"RT gas pore 1.524001 mm at 25.4 mm"}) == "A reject, B accept");
    CHECK(verdicts({"RT gas pore 0.050 at 1", "RT gas pore 0.050 at 1.5"}) == "A accept, B accept");
    CHECK(verdicts({"RT gas pore 0.050 at 1", "RT gas pore 0.051 at 1.5"}) == "A reject, B accept");
    CHECK(verdicts({"RT gas pore 0.050 at 1", "RT gas pore 0.051 at 3"}) == "A accept, B accept");
    CHECK(verdicts({"RT slag inclusion 0.090 at 1"}) == "A reject, B accept");
    CHECK(verdicts({"RT slag inclusion 0.091 at 1"}) == "A reject, B reject");
    CHECK(judged(full, {"joint=groove material=steel thickness=2in weld-length=8in",
                        {"RT slag inclusion 0.180 at 1"}})
              .verdicts() == "A reject, B accept");
    CHECK(full->rules[0].limits[0].text == "lesser of 0.25 x T and 0.06 in");
    CHECK(authority("1", full->rules[0].standings[0]) == "1, filled by A. Field and B. Reed (page 21 of it)");
    CHECK(full->hash == set->hash);
    CHECK(set->rules[0].limits[0].formula.has_blanks()); // the one that was loaded stays as it was
    // One of two is still open.
    const auto half = with_owners_copy(set, {{filling("pore", "A", Exact(60 * thou))}, {}});
    CHECK(judged(half, {coupon, {"RT gas pore 0.010 at 1"}}).verdicts() == "A cannot say, B accept");
    CHECK(half->rules[0].standings[0].kind == Standing::Kind::blank);
    CHECK(half->rules[2].standings[0].kind == Standing::Kind::filled);
}

TEST_CASE("a confirmation is printed wherever the standing is, and what cannot be meant is left") {
    const auto set = set_from(head() + blanks + rules);
    CHECK(with_owners_copy(set, {}) == set);
    const auto confirmed = with_owners_copy(
        set, {{filling("nowhere", "A", 1), filling("pore", "Z", 1)},
              {{"size", "B", "confirmed by A. Field (page 12, edition 2017)"}, {"no-rule", "B", "x"}}});
    CHECK(authority("1", confirmed->rules[0].standings[1]) ==
          "1, house, confirmed by A. Field (page 12, edition 2017)");
    CHECK(confirmed->rules[0].standings[0].confirmed.empty());
    CHECK(confirmed->fillings.empty());
    CHECK_FALSE(needs_checking(Standing{Standing::Kind::memory, "x", "confirmed by A. Field"}));
    CHECK(needs_checking(Standing{Standing::Kind::memory, "x", ""}));
}

TEST_CASE("no value is taken for a blank that nobody could mean") {
    const auto set = set_from(head() + blanks + rules);
    const Blank &pore = set->blanks[0];
    CHECK(pore.fault_of(Exact(60 * thou), Unit::inch).empty());
    CHECK(pore.fault_of(Exact(250 * thou), Unit::inch).empty());
    CHECK_THAT(pore.fault_of(Exact(250 * thou + 1), Unit::inch), says("plausible is over 0 in to 1/4 in"));
    CHECK_THAT(pore.fault_of(Exact(0), Unit::inch), says("allows nothing"));
    Blank count;
    count.kind = Blank::Kind::count;
    CHECK(count.fault_of(Exact(0), Unit::inch).empty());
    CHECK_THAT(count.fault_of(Exact::fraction(1, 2), Unit::inch), says("no whole number"));
}

TEST_CASE("a set over another one takes its blanks, class by class") {
    const BaseText base = [&](const std::string &name) -> std::optional<std::string> {
        return name == "base" ? std::optional(head() + blanks + rules) : std::nullopt;
    };
    const Loaded loaded =
        load_criteria("set: over\ntitle: t\nedition: e\nextends: base\nclasses: {strict: A, usual: B}\n",
                      Vocabulary::shipped(), base);
    REQUIRE(loaded.set);
    REQUIRE(loaded.set->blanks.size() == 4);
    CHECK(loaded.set->blanks[1].classes == std::vector<bool>{true, false});
}
