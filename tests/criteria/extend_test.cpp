// A set that extends another: what it takes, changes, leaves out and adds.
#include "case.hpp"
#include "catch.hpp"
#include "criteria/shipped.hpp"
#include "measure/sha256.hpp"

#include <algorithm>
#include <map>

using namespace beadbook;
using namespace beadbook::test;

namespace {

const std::string base_text = R"(set: base
title: Base
edition: "2014"
units: mm
classes: [B, {id: C, title: middle}, D]
quantities: {t: thinner member}
formulas: {third: t/3}
required exams:
  - {id: film, one of: RT, classes: [B], clause: c, standing: {read: p1}}
relevance:
  - {id: small, types: porosity, exams: RT, classes: D, ignore: size under 0.2 mm, clause: c, standing: {house: h}}
rules:
  - {id: pore, types: porosity, exams: RT, measure: size, at most: {B: 1 mm, C: 2 mm, D: 3 mm}, clause: c, standing: {read: p1}, standing of: {D: {memory: m}}}
  - {id: slag, types: inclusion, exams: RT, measure: length, at most: third, clause: c, standing: {read: p2}}
  - {id: crack, types: crack, exams: RT, allowed: none, clause: c, standing: {read: p3}}
gaps:
  - {text: arcs were not read, types: stray arc, exams: VT}
)";
const std::string top = "set: mine\ntitle: Mine\nedition: \"2023\"\nextends: base\n";

Loaded load(const std::string &text, std::map<std::string, std::string> texts = {{"base", base_text}}) {
    return load_criteria(text, Vocabulary::shipped(),
                         [texts = std::move(texts)](const std::string &name) -> std::optional<std::string> {
                             const auto found = texts.find(name);
                             return found == texts.end() ? std::nullopt : std::optional(found->second);
                         });
}
std::string errors(const std::string &text,
                   std::map<std::string, std::string> texts = {{"base", base_text}}) {
    std::string out;
    for (const auto &issue : load(text, std::move(texts)).issues)
        if (issue.severity == Severity::error) out += print(issue, "f", text);
    return out;
}
std::shared_ptr<const CriteriaSet> taken(const std::string &text) {
    const Loaded loaded = load(text);
    INFO(errors(text));
    REQUIRE(loaded.set);
    return loaded.set;
}
std::string limits(const CriteriaSet &set, const std::string &id) {
    for (const auto &rule : set.rules) {
        if (rule.id != id) continue;
        std::string out;
        for (const auto &limit : rule.limits) out += (out.empty() ? "" : "; ") + limit.text;
        return out;
    }
    return "not there";
}

} // namespace

TEST_CASE("a set takes over all that it does not say") {
    const auto set = taken(top);
    CHECK(set->name == "mine");
    CHECK(set->edition == "2023");
    CHECK(set->unit == Unit::millimetre);
    CHECK(set->class_names() == std::vector<std::string>{"B", "C", "D"});
    CHECK(set->classes[1].title == "middle");
    CHECK(set->rules.size() == 3);
    CHECK(limits(*set, "pore") == "1 mm; 2 mm; 3 mm");
    CHECK(set->gaps.size() == 1);
    CHECK(set->extends == "base");
    CHECK(set->extends_edition == "2014");
    CHECK(set->rules[0].standings[0].kind == Standing::Kind::read);
}

TEST_CASE("a set changes, replaces, leaves out and adds") {
    const auto set = taken(top + R"(formulas: {third: t/4}
without: [crack, film, arcs were not read]
changes:
  - {id: pore, at most: {C: 1.5 mm}, standing of: {C: {second hand: two lists}}}
rules:
  - {id: slag, types: inclusion, exams: RT, measure: length, at most: third, clause: new, standing: {read: p9}}
  - {id: arc, types: stray arc, exams: VT, allowed: none, clause: c, standing: {read: p9}}
)");
    CHECK(limits(*set, "pore") == "1 mm; 1.5 mm; 3 mm");
    CHECK(set->rules[0].standings[0].kind == Standing::Kind::read);
    CHECK(set->rules[0].standings[1].kind == Standing::Kind::second_hand);
    CHECK(set->rules[0].standings[2].kind == Standing::Kind::memory);
    CHECK(set->rules[1].clause == "new");
    CHECK(limits(*set, "crack") == "not there");
    CHECK(set->rules.back().id == "arc");
    CHECK(set->required.empty());
    CHECK(set->gaps.empty());
    CHECK(judged(set, {"thickness=8mm", {"RT slag l 2 at 9"}}).verdicts() == "B accept, C accept, D accept");
    CHECK(judged(set, {"thickness=8mm", {"RT slag l 2.01 at 9"}}).verdicts() ==
          "B reject, C reject, D reject");
    // One limit for all becomes one a class where one class changes.
    const auto one = taken(top + "changes: [{id: slag, at most: {D: t}, standing of: {D: {house: x}}}]\n");
    CHECK(limits(*one, "slag") == "third; third; t");
    // The standing of the old limit says nothing of the new one.
    CHECK(errors(top + "changes: [{id: slag, at most: {D: t}}]\n")
              .find("rule 'slag' gets another limit, and the standing of the old one is not the new one's") !=
          std::string::npos);
}

TEST_CASE("what a set changes has a standing of its own, for each class") {
    const auto change = [](const std::string &keys) { return errors(top + "changes: [{" + keys + "}]\n"); };
    CHECK_THAT(change("id: slag, clause: new"),
               says("f:5:11: error: changes: rule 'slag' gets another 'clause'"));
    CHECK_THAT(change("id: slag, when: t over 3 mm"), says("gets another 'when'"));
    CHECK(change("id: slag, clause: new, standing: {house: x}").empty());
    CHECK(change("id: slag, title: Slag, reading: as ever, says: Grind it.").empty());
    // The standing of one class is none for the others, and one for all is none where the base has its own.
    CHECK_THAT(change("id: slag, at most: {C: t, D: t}, standing of: {D: {house: x}}"),
               says("give 'standing of' for C:"));
    CHECK_THAT(change("id: pore, at most: {D: 4 mm}, standing: {house: x}"),
               says("give 'standing of' for D:"));
    CHECK(change("id: pore, at most: {C: 2.5 mm}, standing: {house: x}").empty());
    CHECK(change("id: pore, at most: {D: 4 mm}, standing of: {D: {house: x}}").empty());
}

TEST_CASE("what the base answers about a rule is asked anew where the rule is changed") {
    const std::string counted =
        "  - {id: number, types: gas pore, exams: RT, measure: count, window: 100 mm, at most: 4, clause: c, "
        "standing: {house: h}}\n";
    std::string base = base_text;
    base.insert(base.find("  - {id: pore,"), counted);
    base.erase(base.find("  - {id: pore,"), base.find("  - {id: slag,") - base.find("  - {id: pore,"));
    base += "silence:\n  - {check: size-not-limited, of: number, reason: printed so}\n";
    const std::map<std::string, std::string> texts{{"base", base}};
    const auto asked = [&](const std::string &own) {
        const auto issues = load(top + own, texts).issues;
        return std::any_of(issues.begin(), issues.end(), [](const Issue &issue) {
            return issue.text.find("[size-not-limited]") != std::string::npos;
        });
    };
    CHECK_FALSE(asked(""));
    CHECK_FALSE(asked("changes:\n  - {id: slag, at most: 2 mm, clause: d, standing: {house: h}}\n"));
    CHECK_FALSE(asked("changes:\n  - {id: number, title: How many}\n"));
    CHECK(asked("changes:\n  - {id: number, at most: 40, clause: d, standing: {house: h}}\n"));
    CHECK(asked("rules:\n" + counted));
}

TEST_CASE("a formula that means something else asks for the standing of all that speak of it") {
    const std::string third = top + "formulas: {third: t/4}\n";
    CHECK_THAT(errors(third),
               says("f:5:12: error: formulas.third: 'third' means something else here, and with it "
                    "the limits of rule slag of base"));
    CHECK(errors(top + "formulas: {third: t/3}\n").empty());
    CHECK(errors(third + "changes: [{id: slag, standing: {house: x}}]\n").empty());
    CHECK(errors(third + "without: [slag]\n").empty());
    // By a formula that speaks of it, too.
    CHECK_THAT(errors(top + "quantities: {t: thicker member}\n"), says("limits of rule slag of base"));
}

TEST_CASE("what was not read in this edition is no surer than that") {
    const auto set = taken(top + R"(inherited: {second hand: not verified}
changes: [{id: crack, standing: {read: "new page"}}]
rules:
  - {id: arc, types: stray arc, exams: VT, allowed: none, clause: c, standing: {read: p9}}
)");
    CHECK(set->rules[0].standings[0].kind == Standing::Kind::second_hand);
    CHECK(set->rules[0].standings[0].source == "not verified; there read: p1");
    CHECK(set->rules[0].standings[2].kind == Standing::Kind::memory);
    CHECK(set->rules[2].standings[0].kind == Standing::Kind::read);
    CHECK(set->rules[3].standings[0].kind == Standing::Kind::read);
    CHECK(set->required[0].standing.kind == Standing::Kind::second_hand);
    CHECK(set->relevance[0].standing.kind == Standing::Kind::house);
    CHECK(set->inherited == "second hand: not verified");
    CHECK(errors(top + "inherited: {read: all}\n").find("{second hand: why} or {memory: why}") !=
          std::string::npos);
}

TEST_CASE("classes may stand for those of the base") {
    const auto set = taken(top + R"(classes: {EXC3: B, EXC2: {as: C, title: usual}, EXC1: C}
changes: [{id: pore, at most: {EXC1: 2.5 mm}, standing of: {EXC1: {house: drawing}}}]
)");
    CHECK(set->class_names() == std::vector<std::string>{"EXC3", "EXC2", "EXC1"});
    CHECK(set->classes[1].title == "usual");
    CHECK(limits(*set, "pore") == "1 mm; 2 mm; 2.5 mm");
    CHECK(set->required[0].classes == std::vector<bool>{true, false, false});
    CHECK(set->relevance.empty()); // it spoke for class D only, which nothing here stands for
    CHECK(set->rules[0].standings[2].kind == Standing::Kind::house);
    CHECK(errors(top + "classes: {X: E}\n").find("'E' is no class of base; expected B, C or D") !=
          std::string::npos);
    CHECK(errors(top + "classes: [B, C]\n").find("expected a map from each class") != std::string::npos);
}

TEST_CASE("an unknown base, a circle and a mistake in the base are told where it is named") {
    const auto at = [](const std::string &text, const std::string &error) {
        const std::string all = text;
        INFO(all);
        CHECK(all.find("f:4:10: error: extends: " + error) != std::string::npos);
        CHECK(all.find("error", all.find("error") + 1) == std::string::npos); // and nothing else
    };
    at(errors("set: mine\ntitle: M\nedition: e\nextends: bass\n"), "there is no set 'bass'");
    at(errors("set: base\ntitle: M\nedition: e\nextends: base\n"), "'base' would extend itself");
    at(errors(top, {{"base", "set: base\ntitle: B\nedition: e\nextends: other\n"},
                    {"other", "set: other\ntitle: B\nedition: e\nextends: base\n"}}),
       "'base' has a mistake in line 4: 'other' has a mistake in line 4: 'base' would extend itself");
    at(errors(top, {{"base", "set: base\n  title: B\n"}}), "'base' has a mistake in line");
    CHECK(errors(top + "without: pour\n").find("f:5:10: error: without: nothing in base is called 'pour'") !=
          std::string::npos);
    CHECK(errors(top + "changes: [{id: pour, clause: d}]\n").find("no rule of base is called 'pour'") !=
          std::string::npos);
    CHECK_THAT(errors(top + "changes: [{at most: {C: 1 mm}}]\n"),
               says("f:5:11: error: changes: nothing says which rule of base this changes") &&
                   says("could be meant, written as {id: pore, at most: ...}"));
    CHECK(errors(base_text + "inherited: {memory: x}\n").find("there is no 'extends'") != std::string::npos);
    // What a change breaks stands at the change.
    CHECK(errors(top + "changes: [{id: pore, at most: {C: 2 in2}}]\n").find("f:5:") != std::string::npos);
}

TEST_CASE("the text that is kept holds the base, and its hash changes with it") {
    const auto set = taken(top);
    CHECK(set->hash == sha256(set->text));
    std::string other = base_text;
    other.replace(other.find("C: 2 mm"), 7, "C: 4 mm");
    other.replace(other.find("D: 3 mm"), 7, "D: 5 mm");
    const Loaded changed = load(top, {{"base", other}});
    REQUIRE(changed.set);
    CHECK(changed.set->hash != set->hash);
    // Read again alone, whatever the base says by then.
    const Loaded again = load(set->text, {{"base", other}});
    REQUIRE(again.set);
    CHECK(again.set->text == set->text);
    CHECK(limits(*again.set, "pore") == "1 mm; 2 mm; 3 mm");
    const Loaded alone = load(set->text, {});
    REQUIRE(alone.set);
    CHECK(alone.set->hash == set->hash);
}

TEST_CASE("a base may extend another one") {
    const Loaded chain = load(
        "set: third\ntitle: T\nedition: e\nextends: mid\nwithout: [slag]\n",
        {{"base", base_text}, {"mid", "set: mid\ntitle: M\nedition: m\nextends: base\nwithout: [crack]\n"}});
    REQUIRE(chain.set);
    CHECK(chain.set->rules.size() == 1);
    const Loaded again = load(chain.set->text, {});
    REQUIRE(again.set);
    CHECK(again.set->hash == chain.set->hash);
}

TEST_CASE("ISO 5817:2023 is 2014 but for excess penetration over 3 mm at level C") {
    // Two independent lists of 2023, second hand: 1 + 0.45 b, at most 4.
    const auto of_2014 = shipped_criteria("iso-5817"), of_2023 = shipped_criteria("iso-5817-2023");
    REQUIRE(of_2014->rules.size() == of_2023->rules.size());
    for (std::size_t r = 0; r < of_2014->rules.size(); ++r) {
        const Rule &a = of_2014->rules[r], &b = of_2023->rules[r];
        INFO(a.id);
        CHECK(a.id == b.id);
        for (std::size_t c = 0; c < 3; ++c) {
            const bool changed = a.id == "penetration-thick" && c == 1;
            CHECK((a.limits[c].text == b.limits[c].text) != changed);
            CHECK(b.standings[c].kind != Standing::Kind::read);
        }
    }
    CHECK(of_2023->extends_edition == "ISO 5817:2014");
}
