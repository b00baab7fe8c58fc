// Sets, editions and classes side by side.
#include "operations/comparing.hpp"

#include "catch.hpp"
#include "criteria/load.hpp"
#include "criteria/shipped.hpp"

#include <algorithm>

using namespace beadbook;

namespace {

using SaidKind = SaidOfThing::Kind;

std::size_t class_of(const CriteriaSet &set, const char *id) { return set.class_index(id).value(); }

ComparedClasses compared(const std::string &first, const char *a, const std::string &second, const char *b,
                         const Coupon &coupon = {}) {
    const auto x = shipped_criteria(first), y = shipped_criteria(second);
    return compare_classes(*x, class_of(*x, a), *y, class_of(*y, b), coupon, x->unit);
}

/// A set with one class per limit of a pore's size by VT.
Loaded pore_set(const std::string &name, const std::string &rules, const std::string &unit = "mm") {
    return load_criteria(
        "set: " + name + "\ntitle: x\nedition: \"1\"\nunits: " + unit +
        "\nclasses: [A]\nscope: not read\nquantities: {t: thinner member, a: throat}\nrules:\n" + rules);
}
std::string pore_rule(const std::string &id, const std::string &when, const std::string &limit) {
    return "  - {id: " + id + ", types: gas pore, exams: VT, " +
           (when.empty() ? "" : "when: [" + when + "], ") + "measure: size, at most: " + limit +
           ", clause: \"1\", standing: {house: example}}\n";
}
ComparedClasses compared(const Loaded &a, const Loaded &b, const Coupon &coupon = {}) {
    REQUIRE(a.set);
    REQUIRE(b.set);
    return compare_classes(*a.set, 0, *b.set, 0, coupon, a.set->unit);
}

/// "outcome from to", one a stretch, in nanometres.
std::vector<std::string> told(const ComparedThing &thing) {
    std::vector<std::string> out;
    for (const auto &one : thing.stretches)
        out.push_back(std::string(name_of(one.outcome)) + " " + std::to_string(one.from) + " " +
                      (one.to ? std::to_string(*one.to) : "on"));
    return out;
}

} // namespace

TEST_CASE("each set is equal to itself, in every class and at every thickness", "[comparing]") {
    for (const std::string &name : shipped_sets()) {
        const auto set = shipped_criteria(name);
        for (std::size_t k = 0; k < set->classes.size(); ++k) {
            INFO(name << " " << set->classes[k].id);
            const ComparedClasses all = compare_classes(*set, k, *set, k, {}, set->unit);
            for (const auto &thing : all.things) {
                INFO((thing.of_second ? "second " : "first ") << set->rules[thing.rule].id);
                for (const auto &one : thing.stretches) {
                    INFO(one.from << " " << name_of(one.outcome));
                    CHECK(one.outcome == CompareOutcome::equal);
                }
            }
            CHECK_FALSE((all.rules.any() || all.scope.any() || all.required.any() || all.relevance.any() ||
                         all.merges.any()));
            for (std::size_t e = 0; e < exam_count; ++e)
                CHECK((all.only_first[e].none() && all.only_second[e].none()));
        }
    }
}

TEST_CASE("a class of an ordered set is never stricter than the one before it", "[comparing]") {
    std::size_t held = 0;
    for (const std::string &name : shipped_sets()) {
        const auto set = shipped_criteria(name);
        for (std::size_t k = 0; set->ordered && k + 1 < set->classes.size(); ++k)
            for (const auto &thing : compare_classes(*set, k, *set, k + 1, {}, set->unit).things)
                for (const auto &one : thing.stretches) {
                    INFO(name << ": " << set->rules[thing.rule].id << ", " << set->classes[k].id << " beside "
                              << set->classes[k + 1].id << " from " << one.from);
                    CHECK(one.outcome != CompareOutcome::looser);
                    CHECK(one.outcome != CompareOutcome::never_stricter);
                    CHECK(one.outcome != CompareOutcome::either);
                    held += one.outcome == CompareOutcome::stricter;
                }
    }
    CHECK(held > 200); // else nothing was compared
}

TEST_CASE("ISO 5817: 2014 and 2023 differ in excess penetration, level C, over 3 mm, only", "[comparing]") {
    // Two independent lists of 2023 (second hand): 0.45 b in place of 0.6 b, at most 4 mm both.
    for (const char *level : {"B", "D"})
        for (const auto &thing : compared("iso-5817", level, "iso-5817-2023", level).things)
            CHECK(thing.all_equal());
    std::size_t differing = 0;
    const auto set = shipped_criteria("iso-5817");
    for (const auto &thing : compared("iso-5817", "C", "iso-5817-2023", "C").things) {
        if (thing.all_equal()) continue;
        ++differing;
        REQUIRE_FALSE(thing.of_second);
        CHECK(set->rules[thing.rule].clause == "Table 1, 1.11");
        std::vector<const ThicknessStretch *> other;
        for (const auto &one : thing.stretches)
            if (one.outcome != CompareOutcome::equal) other.push_back(&one);
        REQUIRE(other.size() == 1);
        // Wide beads meet the same 4 mm, so it is not looser for every find.
        CHECK(other[0]->outcome == CompareOutcome::never_stricter);
        CHECK(other[0]->from == 3'000'001);
        CHECK_FALSE(other[0]->to);
        CHECK_FALSE(other[0]->first.from);
    }
    CHECK(differing == 1);
}

TEST_CASE("EN 1090-2, EXC3 is level B of ISO 5817 but for what it does not consider", "[comparing]") {
    // One transcription (second hand): EXC3 is level B; toe angle and micro lack of fusion are not
    // considered.
    const ComparedClasses all = compared("en-1090-2", "EXC3", "iso-5817", "B");
    const auto en = shipped_criteria("en-1090-2");
    bool micro = false, toe = false;
    for (const auto &thing : all.things) {
        if (thing.all_equal()) continue;
        const bool is_micro = thing.types[*Vocabulary::shipped().find("micro lack of fusion")];
        const bool is_toe = thing.types[*Vocabulary::shipped().find("incorrect weld toe")];
        INFO(en->rules[thing.of_second ? 0 : thing.rule].id << " " << told(thing).front());
        CHECK((is_micro || is_toe));
        micro = micro || is_micro;
        toe = toe || is_toe;
    }
    CHECK(micro);
    CHECK(toe);
    CHECK(all.scope.any()); // steel only
}

TEST_CASE("a stretch ends at the edge that a rule names, and where two limits cross", "[comparing]") {
    // 0.3 t to 3 mm, then 1.2 mm; beside 0.2 t + 0.15 mm: they cross at 1.5 mm and, past the edge, at 5.25
    // mm.
    const Loaded a = pore_set("a", pore_rule("thin", "t at most 3 mm", "0.3 x t") +
                                       pore_rule("thick", "t over 3 mm", "1.2 mm"));
    const Loaded b = pore_set("b", pore_rule("all", "", "0.2 x t + 0.15 mm"));
    const ComparedClasses all = compared(a, b);
    REQUIRE(all.things.size() == 1);
    CHECK(told(all.things[0]) == std::vector<std::string>{"stricter 1 1499999", "equal 1500000 1500000",
                                                          "looser 1500001 3000000", "looser 3000001 5249999",
                                                          "equal 5250000 5250000", "stricter 5250001 on"});
    CHECK(all.things[0].stretches[2].first.to == Exact(900'000));
    CHECK(all.things[0].stretches[2].second.to == Exact(750'000));
}

TEST_CASE("what a find or a fact leaves open is compared for all its values", "[comparing]") {
    const auto outcome = [](const std::string &first, const std::string &second, const Coupon &coupon = {}) {
        const ComparedClasses all = compared(pore_set("a", pore_rule("r", "", first)),
                                             pore_set("b", pore_rule("r", "", second)), coupon);
        REQUIRE(all.things.size() == 1);
        REQUIRE(all.things[0].stretches.size() == 1);
        return name_of(all.things[0].stretches[0].outcome);
    };
    CHECK(outcome("0.2 x a", "0.3 x a") == "stricter");
    CHECK(outcome("0.3 x a", "0.2 x a") == "looser");
    CHECK(outcome("0.1 x a + 0.1 x a", "0.2 x a") == "equal");
    CHECK(outcome("lesser of 0.3 x a and 2 mm", "0.3 x a") == "stricter or equal");
    CHECK(outcome("0.3 x a", "lesser of 0.3 x a and 2 mm") == "looser or equal");
    CHECK(outcome("0.3 x a", "2 mm") == "stricter or looser");
    Coupon thick_throat;
    thick_throat.values.set(Quantity::throat, Exact(10'000'000));
    CHECK(outcome("0.3 x a", "2 mm", thick_throat) == "looser");
    CHECK(outcome("none", "0.3 x a") == "stricter");
    CHECK(outcome("no limit", "0.3 x a") == "looser");
    CHECK(outcome("no limit", "none") == "looser");
    CHECK(outcome("a person decides", "0.3 x a") == "cannot say");
    CHECK(outcome("not said", "none") == "cannot say");
    CHECK(outcome("not said", "not said") == "equal");
}

TEST_CASE("what is counted is whole, and a length is not", "[comparing]") {
    const auto outcome = [](const std::string &first, const std::string &second) {
        const auto set = [](const std::string &name, const std::string &rest) {
            return pore_set(name, "  - {id: r, types: gas pore, exams: VT, " + rest +
                                      ", clause: \"1\", standing: {house: example}}\n");
        };
        const ComparedClasses all = compared(set("a", first), set("b", second));
        REQUIRE(all.things.size() == 1);
        REQUIRE(all.things[0].stretches.size() == 1);
        return name_of(all.things[0].stretches[0].outcome);
    };
    const std::string count = "measure: count, window: 100 mm, ",
                      sum = "measure: sum of length, window: 100 mm, ";
    CHECK(outcome(count + "under: 4", count + "at most: 3") == "equal");
    CHECK(outcome(count + "under: 4", count + "at most: 4") == "stricter");
    CHECK(outcome(count + "under: 4", count + "at most: 2") == "looser");
    CHECK(outcome(count + "under: 3.5", count + "at most: 3") == "equal");
    CHECK(outcome(count + "at most: 0", "allowed: none") == "equal");
    CHECK(outcome(count + "under: 1", count + "at most: 0") == "equal");
    CHECK(outcome(count + "under: 2", "allowed: none") == "looser");
    CHECK(outcome(sum + "under: 4 mm", sum + "at most: 4 mm") == "stricter");
    // On half of the window under 2 is left of the one, and at most 1.5 of the other.
    const std::string shrinks = ", short weld: in proportion";
    CHECK(outcome(count + "under: 4" + shrinks, count + "at most: 3" + shrinks) == "looser or equal");
    CHECK(outcome(count + "at most: 3" + shrinks, count + "at most: 3" + shrinks) == "equal");
}

TEST_CASE("one rule's conditions are held against another's; a rule of one side only is told",
          "[comparing]") {
    const Loaded wide = pore_set("a", pore_rule("r", "", "2 mm"));
    const Loaded narrow = pore_set("b", pore_rule("r", "joint is groove", "1 mm"));
    const ComparedClasses open = compared(wide, narrow);
    REQUIRE(open.things.size() == 2);
    CHECK(open.things[0].conditions.empty());
    CHECK(told(open.things[0]) == std::vector<std::string>{"only in the first 1 on"});
    CHECK(open.things[0].stretches[0].second.kind == SaidKind::narrower);
    CHECK(open.things[1].conditions == std::vector<std::string>{"joint is groove"});
    CHECK(told(open.things[1]) == std::vector<std::string>{"looser 1 on"});

    Coupon groove;
    groove.facts[static_cast<std::size_t>(Fact::joint)] = word_index(info(Fact::joint), "groove");
    const ComparedClasses known = compared(wide, narrow, groove);
    REQUIRE(known.things.size() == 1);
    CHECK(told(known.things[0]) == std::vector<std::string>{"looser 1 on"});

    // What forbids any find is stricter whatever is measured of it.
    const Loaded none = pore_set("c", "  - {id: r, types: gas pore, exams: VT, allowed: none, clause: \"1\", "
                                      "standing: {house: example}}\n");
    const ComparedClasses forbidden = compared(none, wide);
    REQUIRE(forbidden.things.size() == 1);
    CHECK(told(forbidden.things[0]) == std::vector<std::string>{"stricter 1 on"});

    const Loaded crack = pore_set("d", "  - {id: r, types: crack, exams: VT, allowed: none, clause: \"1\", "
                                       "standing: {house: example}}\n");
    const ComparedClasses apart = compared(crack, wide);
    CHECK(apart.things.empty());
    CHECK(apart.only_first[0][*Vocabulary::shipped().find("crack")]);
    CHECK(apart.only_second[0][*Vocabulary::shipped().find("gas pore")]);
}

TEST_CASE("what a set does not cover is told of a thing that is only there", "[comparing]") {
    const Loaded fillets = pore_set("a", pore_rule("r", "joint is fillet", "2 mm"));
    const Loaded grooves = load_criteria(
        "set: b\ntitle: x\nedition: \"1\"\nunits: mm\nclasses: [A]\nscope: [{id: j, when: joint is groove, "
        "clause: \"1\", standing: {house: example}}]\nrules:\n" +
        pore_rule("r", "", "1 mm"));
    const ComparedClasses all = compared(fillets, grooves);
    REQUIRE(all.things.size() == 2);
    CHECK(all.things[0].conditions == std::vector<std::string>{"joint is fillet"});
    CHECK(all.things[0].stretches[0].second.kind == SaidKind::outside);
    CHECK(told(all.things[0]) == std::vector<std::string>{"only in the first 1 on"});
}

TEST_CASE("a rule that forbids is held against one that measures", "[comparing]") {
    const Loaded none =
        pore_set("a", "  - {id: r, types: gas pore, exams: VT, when: [joint is groove, seam is "
                      "straight or longitudinal], allowed: none, clause: \"1\", standing: "
                      "{house: example}}\n");
    const Loaded some = pore_set("b", pore_rule("r", "joint is groove", "2 mm"));
    const ComparedClasses all = compared(none, some);
    REQUIRE(all.things.size() == 2);
    CHECK(told(all.things[0]) == std::vector<std::string>{"stricter 1 on"});
    CHECK(all.things[0].stretches[0].second.kind == SaidKind::measured);
    CHECK(told(all.things[1]) == std::vector<std::string>{"only in the second 1 on"});
    CHECK(all.things[1].stretches[0].first.kind == SaidKind::narrower);
}

TEST_CASE("two authors who call the thickness otherwise mean the same stretch", "[comparing]") {
    const auto row_set = [](const std::string &name, const std::string &symbol) {
        return load_criteria(
            "set: " + name +
            "\ntitle: x\nedition: \"1\"\nunits: mm\nclasses: [A]\nscope: not read\n"
            "quantities: {" +
            symbol +
            ": thinner member}\nrules:\n  - {id: r, types: porosity, exams: RT, measure: sum "
            "of size, window: 12 x " +
            symbol + ", at most: " + symbol + ", clause: c, standing: {house: example}}\n");
    };
    const ComparedClasses all = compared(row_set("a", "t"), row_set("b", "T"));
    REQUIRE(all.things.size() == 1);
    CHECK(told(all.things[0]) == std::vector<std::string>{"equal 1 on"});
}

TEST_CASE("what is printed in both units may be equal in one of them alone", "[comparing]") {
    const Loaded both = pore_set("a", pore_rule("r", "", "3/16 in or 5 mm"), "in");
    const Loaded one = pore_set("b", pore_rule("r", "", "3/16 in"), "in");
    const Loaded same = pore_set("c", pore_rule("r", "", "3/16 in or 5 mm"), "in");
    REQUIRE((both.set && one.set && same.set));
    const auto differs = [&](const Loaded &other) {
        const ComparedSets all = compare_sets(both.set, other.set, CompareRequest{});
        REQUIRE(all.classes.size() == 1);
        REQUIRE(all.classes[0].things.size() == 1);
        CHECK(all.classes[0].things[0].all_equal());
        return all.classes[0].things[0].differs_in_other_unit;
    };
    CHECK(differs(one));
    CHECK_FALSE(differs(same));
}

TEST_CASE("a blank is told as one, and is equal to itself alone", "[comparing]") {
    const auto blank_set = [](const std::string &name, const std::string &kept) {
        return load_criteria(
            "set: " + name +
            "\ntitle: x\nedition: \"1\"\nunits: mm\nclasses: [A, B]\nscope: not read\n"
            "quantities: {t: thinner member}\nblanks:\n"
            "  - {id: height, kind: length, limits: size of a pore, plausible: over 0 mm, clause: \"1\"}\n"
            "rules:\n" +
            kept);
    };
    const Loaded both = blank_set("a", pore_rule("r", "t over 3 mm", "blank height"));
    const Loaded capped = blank_set("b", pore_rule("r", "", "blank height"));
    const Loaded number = pore_set("c", pore_rule("r", "t over 3 mm", "1 mm"));
    REQUIRE(both.set);
    REQUIRE(capped.set);
    const auto outcome = [](const ComparedClasses &all) {
        REQUIRE(all.things.size() == 1);
        REQUIRE(told(all.things[0]).size() == 1);
        CHECK(all.things[0].stretches[0].first.kind == SaidKind::blank);
        return told(all.things[0]).front();
    };
    CHECK(outcome(compare_classes(*both.set, 0, *both.set, 0, {}, Unit::millimetre)) == "equal 3000001 on");
    // Another class, another set and a number: nobody knows which is the stricter.
    CHECK(outcome(compare_classes(*both.set, 0, *both.set, 1, {}, Unit::millimetre)) ==
          "cannot say 3000001 on");
    CHECK(outcome(compared(both, number)) == "cannot say 3000001 on");
    CHECK(compare_classes(*both.set, 0, *capped.set, 0, {}, Unit::millimetre).things.at(0).stretches.size() ==
          2);
}

TEST_CASE("a value is the same in inches and in millimetres", "[comparing]") {
    const ComparedClasses all = compared(pore_set("a", pore_rule("r", "t over 1/8 in", "1/8 in"), "in"),
                                         pore_set("b", pore_rule("r", "t over 3.175 mm", "3.175 mm")));
    REQUIRE(all.things.size() == 1);
    CHECK(told(all.things[0]) == std::vector<std::string>{"equal 3175001 on"});
}

TEST_CASE("beyond the rows of a table nothing is equal, stricter or looser", "[comparing]") {
    const auto by_table = [](const std::string &name, const std::string &rows) {
        return load_criteria(
            "set: " + name +
            "\ntitle: x\nedition: \"1\"\nunits: mm\nclasses: [A]\nscope: not read\nquantities: "
            "{t: thinner member}\ntables: {pore: {by: t, rows: {" +
            rows + "}}}\nrules:\n" + pore_rule("r", "", "table pore"));
    };
    const Loaded table = by_table("x", "over 3 mm to 6 mm: 1 mm"),
                 number = pore_set("y", pore_rule("r", "", "2 mm"));
    const ComparedClasses all = compared(table, number);
    REQUIRE(all.things.size() == 1);
    CHECK(told(all.things[0]) == std::vector<std::string>{"cannot say 1 3000000", "stricter 3000001 6000000",
                                                          "cannot say 6000001 on"});
    CHECK(all.things[0].stretches[2].first.kind == SaidKind::no_row);
    // Where neither has a row, neither tells anything.
    const ComparedClasses both = compared(table, by_table("z", "over 3 mm to 9 mm: 2 mm"));
    REQUIRE(both.things.size() == 1);
    CHECK(told(both.things[0]) == std::vector<std::string>{"equal 1 3000000", "stricter 3000001 6000000",
                                                           "cannot say 6000001 9000000", "equal 9000001 on"});
}
