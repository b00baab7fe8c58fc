#include "catch.hpp"
#include "language/issue.hpp"
#include "technique/exam_check.hpp"
#include "technique/known_conditions.hpp"

using namespace beadbook;

namespace {

using Conditions = std::map<std::string, std::string>;

Coupon tube() {
    Coupon c;
    c.facts[static_cast<std::size_t>(Fact::form)] = word_index(info(Fact::form), "tube");
    c.facts[static_cast<std::size_t>(Fact::magnetic)] = word_index(info(Fact::magnetic), "yes");
    c.values.set(Quantity::thinner, Exact(nm_per_inch / 2));
    c.values.set(Quantity::outside_diameter, Exact(2 * nm_per_inch));
    return c;
}

/// What one rule says of the conditions: "yes", "no", "cannot say", or "not asked".
std::string rule_says(const std::string &practice, const std::string &rule, const Conditions &conditions,
                      const Coupon &coupon = tube()) {
    const ExamCheck check =
        check_exam(*shipped_practice(practice), conditions, parse_day("2026-11-25"), coupon);
    for (const auto &f : check.findings)
        if (f.rule == rule) return f.holds == Truth::yes ? "yes" : f.holds == Truth::no ? "no" : "cannot say";
    return "not asked";
}

std::string errors_of(const std::string &rule) {
    const std::string text = "practice: p\ntitle: t\nedition: e\nmethod: VT\nrules:\n  - {id: a, " + rule +
                             ", clause: c, standing: {house: x}}\n";
    std::string out;
    for (const auto &issue : load_practice(text).issues) out += print(issue, "p.yaml", text);
    return out;
}

} // namespace

TEST_CASE("the shipped practices load, each rule with its source") {
    CHECK(shipped_practice_names().size() == 12);
    for (const auto &name : shipped_practice_names()) {
        INFO(name);
        const auto practice = shipped_practice(name);
        CHECK(practice->name == name);
        CHECK_FALSE(practice->gaps.empty());
        for (const auto &rule : practice->rules) CHECK_FALSE(rule.standing.source.empty());
    }
}

TEST_CASE("the same facts under different practices", "[published]") {
    struct Row {
        std::string source, practice, rule;
        Conditions conditions;
        std::string expected;
    };
    const Conditions dc_yoke{
        {"technique", "yoke"}, {"current kind", "DC"}, {"spacing", "5 in"}, {"lift", "45 lb"}};
    const std::vector<Row> rows{
        {"DC yoke, 45 lb at 5 in: T.O. asks 40", "to-33b-1-1-mt", "lift-dc-far", dc_yoke, "yes"},
        {"the same: E1444-16 asks 50", "astm-e1444-mt", "lift-dc-far", dc_yoke, "no"},
        {"the same: T9074 allows no DC yoke", "t9074-mt", "yoke-kind", dc_yoke, "no"},
        {"E1444: exactly 50 lb",
         "astm-e1444-mt",
         "lift-dc-far",
         {{"technique", "yoke"}, {"current kind", "DC"}, {"spacing", "6 in"}, {"lift", "50 lb"}},
         "yes"},
        {"E1444: at 4 in 30 lb are enough",
         "astm-e1444-mt",
         "lift-dc-near",
         {{"technique", "yoke"}, {"current kind", "DC"}, {"spacing", "4 in"}, {"lift", "30 lb"}},
         "yes"},
        {"AC yoke of 9.9 lb",
         "t9074-mt",
         "lift",
         {{"technique", "yoke"}, {"current kind", "AC"}, {"lift", "9.9 lb"}},
         "no"},
        {"13.5 kg is printed beside 30 lb, and counts",
         "astm-e1444-mt",
         "lift-dc-near",
         {{"technique", "yoke"}, {"current kind", "DC"}, {"spacing", "3 in"}, {"lift", "13.5 kg"}},
         "yes"},
        {"T.O.: an AC yoke 2 in apart",
         "to-33b-1-1-mt",
         "spacing-ac",
         {{"technique", "yoke"}, {"current kind", "AC"}, {"spacing", "2.999 in"}},
         "no"},
        {"T.O.: from 3 in",
         "to-33b-1-1-mt",
         "spacing-ac",
         {{"technique", "yoke"}, {"current kind", "AC"}, {"spacing", "3 in"}},
         "yes"},
        {"T.O.: a DC yoke from 2 in",
         "to-33b-1-1-mt",
         "spacing-dc",
         {{"technique", "yoke"}, {"current kind", "DC"}, {"spacing", "2 in"}},
         "yes"},
        {"the same, twin",
         "to-33b-1-1-mt",
         "spacing-dc",
         {{"technique", "yoke"}, {"current kind", "DC"}, {"spacing", "1.999 in"}},
         "no"},
        {"T-752.3: copper tips over 25 V",
         "asme-v-mt",
         "prod-tips",
         {{"technique", "prods"}, {"open circuit", "over 25 V"}, {"prod tips", "copper"}},
         "no"},
        {"the same of lead",
         "asme-v-mt",
         "prod-tips",
         {{"technique", "prods"}, {"open circuit", "over 25 V"}, {"prod tips", "lead"}},
         "yes"},
        {"copper, of a voltage that nobody told",
         "asme-v-mt",
         "prod-tips",
         {{"technique", "prods"}, {"prod tips", "copper"}},
         "cannot say"},
        {"T-741: 1 in clean each side", "asme-v-mt", "cleaned", {{"cleaned", "1 in"}}, "yes"},
        {"T-741: 25 mm is printed beside it", "asme-v-mt", "cleaned", {{"cleaned", "25 mm"}}, "yes"},
        {"T-741, twin", "asme-v-mt", "cleaned", {{"cleaned", "24.9 mm"}}, "no"},
        {"T-753: 10 x 2 in prints 5000 ampere-turns, less 10 %",
         "asme-v-mt",
         "coil-long",
         {{"technique", "coil"}, {"L/D", "5"}, {"turns", "5"}, {"current", "900 A"}},
         "yes"},
        {"T-753, twin",
         "asme-v-mt",
         "coil-long",
         {{"technique", "coil"}, {"L/D", "5"}, {"turns", "5"}, {"current", "899 A"}},
         "no"},
        {"T-753: and 10 % more",
         "asme-v-mt",
         "coil-long",
         {{"technique", "coil"}, {"L/D", "5"}, {"turns", "5"}, {"current", "1100 A"}},
         "yes"},
        {"T-753, twin",
         "asme-v-mt",
         "coil-long",
         {{"technique", "coil"}, {"L/D", "5"}, {"turns", "5"}, {"current", "1101 A"}},
         "no"},
        {"T-753: without the turns",
         "asme-v-mt",
         "coil-long",
         {{"technique", "coil"}, {"L/D", "5"}, {"current", "1000 A"}},
         "cannot say"},
        {"T-753, L/D 3 (memory): 15000 less 10 %",
         "asme-v-mt",
         "coil-short",
         {{"technique", "coil"}, {"L/D", "3"}, {"turns", "5"}, {"current", "2700 A"}},
         "yes"},
        {"the same, twin",
         "asme-v-mt",
         "coil-short",
         {{"technique", "coil"}, {"L/D", "3"}, {"turns", "5"}, {"current", "2699 A"}},
         "no"},
        {"E3024 Table 1: a meter past its day",
         "astm-e1444-mt",
         "meter",
         {{"meter due", "2025-01-01"}},
         "no"},
        {"the same, on its last day", "astm-e1444-mt", "meter", {{"meter due", "2026-11-25"}}, "yes"},
        {"E3024 Table 1: the light a week ago",
         "astm-e1444-mt",
         "light-checked",
         {{"light checked", "2026-11-18"}},
         "yes"},
        {"the same, twin", "astm-e1444-mt", "light-checked", {{"light checked", "2026-11-17"}}, "no"},
        {"E3024 Table 1: UV-A daily",
         "astm-e1444-mt",
         "uv-checked",
         {{"colour", "fluorescent"}, {"uv checked", "earlier"}},
         "no"},
        {"E3024 Table 1: the bath each shift",
         "astm-e1444-mt",
         "bath-checked",
         {{"particles", "wet"}, {"bath checked", "this day"}},
         "no"},
        {"the same by T9074: at least daily",
         "t9074-mt",
         "bath-checked",
         {{"particles", "wet"}, {"bath checked", "this day"}},
         "yes"},
        {"method C, flushed with solvent",
         "asme-v-pt",
         "no-flushing",
         {{"removal", "C"}, {"flushed", "yes"}},
         "no"},
        {"method A, washed off",
         "asme-v-pt",
         "no-flushing",
         {{"removal", "A"}, {"flushed", "yes"}},
         "not asked"},
        {"T.O.: a booth of 2 fc",
         "to-33b-1-1-pt",
         "ambient",
         {{"type", "I"}, {"booth", "yes"}, {"ambient", "2 fc"}},
         "yes"},
        {"the same, twin",
         "to-33b-1-1-pt",
         "ambient",
         {{"type", "I"}, {"booth", "yes"}, {"ambient", "2.01 fc"}},
         "no"},
        {"the same, in a booth or not, nobody told",
         "to-33b-1-1-pt",
         "ambient",
         {{"type", "I"}, {"ambient", "5 fc"}},
         "cannot say"},
        {"the same, in no booth",
         "to-33b-1-1-pt",
         "ambient",
         {{"type", "I"}, {"booth", "no"}, {"ambient", "5 fc"}},
         "not asked"},
        {"colour vision of exactly five years ago",
         "iso-17637-vt",
         "colour-vision",
         {{"colour vision", "2021-11-25"}},
         "yes"},
        {"the same, twin", "iso-17637-vt", "colour-vision", {{"colour vision", "2021-11-24"}}, "no"},
        {"T.O. bans prods", "to-33b-1-1-mt", "no-prods", {{"technique", "prods"}}, "no"},
        {"T-752: prods 8 in at 720 A",
         "asme-v-mt",
         "prods-thin",
         {{"technique", "prods"}, {"spacing", "8 in"}, {"current", "720 A"}},
         "yes"},
        {"T-752, twin",
         "asme-v-mt",
         "prods-thin",
         {{"technique", "prods"}, {"spacing", "8 in"}, {"current", "719 A"}},
         "no"},
        {"T-752: 880 A is the other end",
         "asme-v-mt",
         "prods-thin",
         {{"technique", "prods"}, {"spacing", "8 in"}, {"current", "880 A"}},
         "yes"},
        {"T-752, twin",
         "asme-v-mt",
         "prods-thin",
         {{"technique", "prods"}, {"spacing", "8 in"}, {"current", "881 A"}},
         "no"},
        {"T-752.3: 9 in apart",
         "asme-v-mt",
         "prods-far",
         {{"technique", "prods"}, {"spacing", "9 in"}},
         "no"},
        {"settled 30 min, water",
         "to-33b-1-1-mt",
         "settle-water",
         {{"particles", "wet"}, {"carrier", "water"}, {"settling", "30 min"}},
         "yes"},
        {"settled 30 min, oil",
         "to-33b-1-1-mt",
         "settle-oil",
         {{"particles", "wet"}, {"carrier", "oil"}, {"settling", "30 min"}},
         "no"},
        {"residual 10 G",
         "to-33b-1-1-mt",
         "residual",
         {{"demagnetizing", "needed"}, {"residual", "10 G"}},
         "no"},
        {"residual exactly 3 G",
         "to-33b-1-1-mt",
         "residual",
         {{"demagnetizing", "needed"}, {"residual", "3 G"}},
         "yes"},
        {"55 F: ASME asks 5 min", "asme-v-pt", "dwell", {{"temperature", "55 F"}, {"dwell", "5 min"}}, "yes"},
        {"55 F: T.O. asks twice its base",
         "to-33b-1-1-pt",
         "dwell-cold",
         {{"temperature", "55 F"}, {"dwell", "5 min"}, {"base dwell", "5 min"}},
         "no"},
        {"45 F: ASME asks 10 min",
         "asme-v-pt",
         "dwell-cold",
         {{"temperature", "45 F"}, {"dwell", "10 min"}},
         "yes"},
        {"45 F, twin", "asme-v-pt", "dwell-cold", {{"temperature", "45 F"}, {"dwell", "599 s"}}, "no"},
        {"T.O., base 8 at 110 F: never under 5 min",
         "to-33b-1-1-pt",
         "dwell-warm",
         {{"temperature", "110 F"}, {"base dwell", "8 min"}, {"dwell", "5 min"}},
         "yes"},
        {"the same with 4 min",
         "to-33b-1-1-pt",
         "dwell-warm",
         {{"temperature", "110 F"}, {"base dwell", "8 min"}, {"dwell", "4 min"}},
         "no"},
        {"T.O.: 130 F", "to-33b-1-1-pt", "temperature", {{"temperature", "130 F"}}, "no"},
        {"8 min after developer: T9074",
         "t9074-pt",
         "developing",
         {{"developer", "nonaqueous"}, {"developing", "8 min"}},
         "yes"},
        {"the same: ASME", "asme-v-pt", "developing", {{"developing", "8 min"}}, "no"},
        {"65 min: ASME", "asme-v-pt", "developing", {{"developing", "65 min"}}, "no"},
        {"60 min: ASME", "asme-v-pt", "developing", {{"developing", "60 min"}}, "yes"},
        {"oven 150 F: T9074", "t9074-pt", "oven", {{"dried by", "oven"}, {"oven", "150 F"}}, "yes"},
        {"oven 150 F: T.O.", "to-33b-1-1-pt", "oven", {{"dried by", "oven"}, {"oven", "150 F"}}, "no"},
        {"type II at 60 fc: ASME", "asme-v-pt", "light", {{"type", "II"}, {"light", "60 fc"}}, "no"},
        {"type II at 60 fc: TM 5-5420 asks 500 lx",
         "tm-5-5420-pt",
         "light",
         {{"type", "II"}, {"light", "60 fc"}},
         "yes"},
        {"emulsifier 6 min",
         "to-33b-1-1-pt",
         "emulsifier",
         {{"type", "I"}, {"removal", "B"}, {"emulsifier", "6 min"}},
         "no"},
        {"hydrophilic dip 150 s",
         "to-33b-1-1-pt",
         "remover",
         {{"removal", "D"}, {"emulsifier", "150 s"}},
         "no"},
        {"service flaws, dwell 20 min",
         "to-33b-1-1-pt",
         "dwell-service",
         {{"looking for", "service"}, {"dwell", "20 min"}},
         "no"},
        {"ambient 30 fc asks 5000 uW/cm2",
         "to-33b-1-1-pt",
         "uv-bright",
         {{"type", "I"}, {"ambient", "30 fc"}, {"uv", "4999 uW/cm2"}},
         "no"},
        {"the same, met",
         "to-33b-1-1-pt",
         "uv-bright",
         {{"type", "I"}, {"ambient", "30 fc"}, {"uv", "5000 uW/cm2"}},
         "yes"},
        {"fluorescent after visible dye",
         "asme-v-pt",
         "order",
         {{"type", "I"}, {"earlier dye", "yes"}},
         "no"},
        {"VT 60 fc: ASME", "asme-v-vt", "light", {{"light", "60 fc"}}, "no"},
        {"VT 60 fc: ISO asks 350 lx", "iso-17637-vt", "light", {{"light", "60 fc"}}, "yes"},
        {"1000 lx is not quite 100 fc", "asme-v-vt", "light", {{"light", "1000 lx"}}, "no"},
        {"VT at 28 in", "asme-v-vt", "distance", {{"distance", "28 in"}}, "no"},
        {"VT at 24 in", "asme-v-vt", "distance", {{"distance", "24 in"}}, "yes"},
        {"24 in is over 600 mm", "iso-17637-vt", "distance", {{"distance", "24 in"}}, "no"},
        {"J2: ASME", "asme-v-vt", "letters", {{"vision test", "J2"}}, "no"},
        {"J2: AWS B5.2", "aws-b5.2-vt", "letters", {{"vision test", "J2"}}, "yes"},
        {"vision test of exactly a year ago", "asme-v-vt", "vision", {{"vision", "2025-11-25"}}, "yes"},
        {"of a year and a day ago", "asme-v-vt", "vision", {{"vision", "2025-11-24"}}, "no"},
        {"the same: AWS B5.2 asks three years", "aws-b5.2-vt", "vision", {{"vision", "2025-11-24"}}, "yes"},
        {"gamma film 1.9 (memory)",
         "asme-v-rt",
         "density-gamma",
         {{"image", "film"}, {"source", "Ir-192"}, {"density", "1.9"}},
         "no"},
        {"X-ray film 1.9 (memory)",
         "asme-v-rt",
         "density-x",
         {{"image", "film"}, {"source", "X-ray"}, {"density", "1.9"}},
         "yes"},
        {"two of three exposures",
         "asme-v-rt",
         "single-image",
         {{"view", "double wall single image"}, {"exposures", "2"}},
         "no"},
        {"ellipse: two are enough", "asme-v-rt", "ellipse", {{"view", "ellipse"}, {"exposures", "2"}}, "yes"},
        {"level I signs a film", "asme-v-rt", "level", {{"level", "I"}}, "no"},
    };
    for (const auto &row : rows) {
        INFO(row.source);
        CHECK(rule_says(row.practice, row.rule, row.conditions) == row.expected);
    }
    Coupon austenitic = tube();
    austenitic.facts[static_cast<std::size_t>(Fact::magnetic)] = word_index(info(Fact::magnetic), "no");
    CHECK(rule_says("astm-e1444-mt", "magnetic", {}, austenitic) == "no");
    // Printed in two units, and met by either: E1444-16e1 7.4.4, 30 lb (13.5 kg); ASME V T-952, 100 fc (1076
    // lx).
    const auto lift = [](const char *said) {
        return rule_says(
            "astm-e1444-mt", "lift-dc-near",
            {{"technique", "yoke"}, {"current kind", "DC"}, {"spacing", "4 in"}, {"lift", said}});
    };
    CHECK(lift("13.5 kg") == "yes");
    CHECK(lift("13.499 kg") == "no");
    CHECK(rule_says("asme-v-vt", "light", {{"light", "1076 lx"}}) == "yes");
    CHECK(rule_says("asme-v-vt", "light", {{"light", "1075 lx"}}) == "no");
}

TEST_CASE("unsharpness is worked out from source and distances") {
    const Conditions near{
        {"focal size", "3 mm"}, {"source to object", "300 mm"}, {"object to film", "60 mm"}};
    CHECK(rule_says("asme-v-rt", "ug-2", near) == "no"); // 0.6 mm is over 0.020 in
    const Conditions far{{"focal size", "3 mm"}, {"source to object", "600 mm"}, {"object to film", "60 mm"}};
    CHECK(rule_says("asme-v-rt", "ug-2", far) == "yes");
    CHECK(rule_says("asme-v-rt", "ug-2", {{"focal size", "3 mm"}}) == "cannot say");
    CHECK(rule_says("asme-v-rt", "ug-3", far) == "not asked");
}

TEST_CASE("a missing condition is never valid, one that does not matter is not asked") {
    const auto practice = shipped_practice("asme-v-vt");
    Conditions all{{"distance", "20 in"}, {"angle", "45 deg"},
                   {"light", "120 fc"},   {"vision", "2026-06-01"},
                   {"vision test", "J1"}, {"certificate", "2026-11-25"}, // its last day
                   {"level", "II"}};
    const auto check = [&](const Conditions &c) {
        return check_exam(*practice, c, parse_day("2026-11-25"), tube());
    };
    CHECK(check(all).valid == Truth::yes);
    CHECK(check(all).why_not().empty());
    for (const auto &[name, value] : all) {
        Conditions less = all;
        less.erase(name);
        INFO(name);
        CHECK(check(less).valid == Truth::unknown);
        CHECK_THAT(check(less).why_not(), says("cannot be called valid without " + name));
    }
    Conditions bad = all;
    bad["light"] = "60 fc";
    bad.erase("angle");
    CHECK(check(bad).valid == Truth::no);
    CHECK(check(bad).why_not() ==
          "not valid: light 60 fc: at least 100 fc or 1076 lx is asked [T-952, read]; examine "
          "again with more light, and measure it");
    // What was written before the words were fixed is as good as missing, and is told.
    Conditions old = all;
    old["light"] = "bright";
    CHECK_THAT(check(old).why_not(), says("'bright' does not begin with a number"));
    // A meter that is out of date is warned of; a certificate counts through its last day.
    all["meter due"] = "2026-11-24";
    CHECK(check(all).valid == Truth::yes);
    bool warned = false;
    for (const auto &f : check(all).findings)
        warned = warned || (f.warning && f.rule == "meter" && f.holds == Truth::no);
    CHECK(warned);
    all["certificate"] = "2026-11-24";
    CHECK(check(all).valid == Truth::no);
}

TEST_CASE("the prompt asks only for what matters, given what was said") {
    const auto practice = shipped_practice("astm-e1444-mt");
    const auto wanted = [&](const Conditions &c) {
        return conditions_wanted(*practice, c, parse_day("2026-11-25"), tube());
    };
    const auto has = [](const std::vector<std::string> &list, const std::string &name) {
        return std::find(list.begin(), list.end(), name) != list.end();
    };
    CHECK(has(wanted({}), "technique"));
    CHECK(has(wanted({{"technique", "yoke"}}), "lift"));
    CHECK_FALSE(has(wanted({{"technique", "coil"}}), "lift"));
    CHECK(has(wanted({{"technique", "coil"}}), "field"));
    CHECK_FALSE(has(wanted({{"colour", "visible"}}), "uv"));
    CHECK(has(wanted({{"colour", "fluorescent"}}), "uv"));
    CHECK_FALSE(has(wanted({}), "magnetic")); // that is the coupon's
}

TEST_CASE("mistakes in a practice are told with their place") {
    const std::vector<std::pair<std::string, std::string>> rows{
        {"must: lihgt at least 100 fc",
         "p.yaml:6:19: error: rules.a.must: found 'lihgt'; expected a number with its unit or a name that is "
         "known here; did you mean 'light'?"},
        {"must: light at least 24 in",
         "p.yaml:6:34: error: rules.a.must: compares an amount of light with a length"},
        {"must: light", "expected a comparison: over, at least, from, under, below, up to, to or at most"},
        {"must: technique is yolk", "'yolk' is no technique; expected yoke, prods, coil, head shot, central "
                                    "conductor or cable; did you mean 'yoke'?"},
        {"must: technique at least 3", "expected 'is' and a word"},
        {"must: vision within a year", "is no period"},
        {"must: certificate at least 3 min", "expected 'not past' or 'within'"},
        {"must: current at least 90 A/in x lift", "multiplies a current per length by a weight"},
        {"must: light at least 100 fc or so", "found 'or so' where the condition should end"},
        {"must: dwell at least greater of 5 min", "expected 'and'"},
        {"must: dwell at least greater of 5 min and 3 in", "chooses between a time and a length"},
        {"must: dwell at least technique", "'technique' is a word; a number is expected here"},
        {"when: technique is yoke", "'must' is missing"},
        {"must: light at least 1 fc, wen: x", "unknown key 'wen'"},
    };
    for (const auto &[rule, expected] : rows) CHECK_THAT(errors_of(rule), says(expected));
    CHECK(errors_of("must: current from 90 A/in x spacing to 110 A/in x spacing").empty());
}

TEST_CASE("a condition is no nought that no apparatus gives") {
    const auto why = [](const char *name, const char *value) {
        const ConditionInfo &info = *condition_info(name);
        return impossible(info, read_condition_value(info, value));
    };
    for (const auto &[name, nought] : {std::pair("density", "0"),
                                       {"highest density", "0"},
                                       {"density at iqi", "0.0"},
                                       {"focal size", "0 mm"},
                                       {"object to film", "0 in"},
                                       {"unsharpness", "0 in"},
                                       {"current", "0 A"},
                                       {"spacing", "0 in"},
                                       {"distance", "0 in"},
                                       {"base dwell", "0 min"},
                                       {"bath", "0 mL"},
                                       {"energy", "n/a"},
                                       {"iqi", "-"}}) {
        INFO(name);
        CHECK_FALSE(why(name, nought).empty());
    }
    for (const auto &[name, value] : {std::pair("ambient", "0 fc"),
                                      {"residual", "0 G"},
                                      {"drying", "0 min"},
                                      {"temperature", "-5 C"},
                                      {"density", "0.3"},
                                      {"dwell", "0 min"}}) { // it is recorded, and the exam does not count
        INFO(name);
        CHECK(why(name, value).empty());
    }
    CHECK_THAT(unbelievable(*condition_info("density"), "28"), says("from 1 to 5 is common"));
    CHECK(unbelievable(*condition_info("density"), "2.6").empty());
    CHECK_THAT(unbelievable(*condition_info("angle"), "0 deg"), says("from 15 deg to 90 deg"));
    CHECK(unbelievable(*condition_info("dwell"), "0 min").empty()); // told elsewhere
}

TEST_CASE("each condition that is a number has a range that people believe") {
    for (const auto &one : condition_infos()) {
        if (one.kind != ConditionInfo::Kind::amount) continue;
        INFO(one.name);
        REQUIRE_FALSE(one.least.empty());
        CHECK(unbelievable(one, one.least).empty());
        CHECK(unbelievable(one, one.most).empty());
    }
    for (const auto &[name, value] : {std::pair("light", "5 lx"),
                                      {"temperature", "900 C"},
                                      {"lift", "10 kg"},
                                      {"residual", "0 G"},
                                      {"ambient", "0 fc"},
                                      {"uv", "12 uW/cm2"},
                                      {"unsharpness", "20 mm"}}) {
        INFO(name << " " << value);
        const bool believed = std::string_view(name) == "lift" || std::string_view(name) == "residual" ||
                              std::string_view(name) == "ambient";
        CHECK(unbelievable(*condition_info(name), value).empty() == believed);
    }
}

TEST_CASE("what a condition says of the coupon's form, and how long ago a check was, may be beyond belief") {
    const ConditionInfo &view = *condition_info("view");
    CHECK_THAT(unbelievable_of_form(view, "ellipse", "plate"), says("so a tube is radiographed"));
    CHECK(unbelievable_of_form(view, "ellipse", "tube").empty());
    CHECK(unbelievable_of_form(view, "ellipse", "").empty());
    CHECK(unbelievable_of_form(view, "single wall", "plate").empty());
    const ConditionInfo &yoke = *condition_info("yoke checked");
    CHECK(unbelievably_old(yoke, "2025-11-25", parse_day("2026-11-25")).empty());
    CHECK_THAT(unbelievably_old(yoke, "2025-11-24", parse_day("2026-11-25")),
               says("more than 1 year before the exam of 2026-11-25"));
    CHECK(unbelievably_old(*condition_info("certificate"), "2010-01-01", parse_day("2026-11-25")).empty());
}

TEST_CASE("a word may undo an exam, by itself or beside another one") {
    CHECK_FALSE(undone(*condition_info("iqi seen"), {{"iqi seen", "no"}}).empty());
    CHECK_FALSE(undone(*condition_info("letter B"), {{"letter B", "lighter"}}).empty());
    CHECK(undone(*condition_info("letter B"), {{"letter B", "darker"}}).empty());
    CHECK_FALSE(undone(*condition_info("film marks"), {{"film marks", "some"}}).empty());
    const ConditionInfo &dye = *condition_info("earlier dye");
    CHECK(undone(dye, {{"earlier dye", "yes"}}).empty());
    CHECK(undone(dye, {{"earlier dye", "yes"}, {"type", "II"}}).empty());
    CHECK_FALSE(undone(dye, {{"earlier dye", "yes"}, {"type", "I"}}).empty());
}

TEST_CASE("the lowest density of a film is not above its highest one") {
    const ConditionInfo &lowest = *condition_info("density");
    CHECK(contradicted(lowest, {{"density", "2.6"}}).empty());
    CHECK(contradicted(lowest, {{"density", "2.6"}, {"highest density", "2.6"}}).empty());
    CHECK_THAT(contradicted(lowest, {{"density", "2.61"}, {"highest density", "2.6"}}),
               says("density 2.61 is more than highest density 2.6"));
}
