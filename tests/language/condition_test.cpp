// One grammar: each condition is written in a criteria set, in rules for welders and in a practice, and read
// and refused alike.
#include "case.hpp"
#include "catch.hpp"
#include "judge/item.hpp"
#include "qualify/range.hpp"
#include "technique/exam_check.hpp"

#include <sstream>

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// YAML in single quotes, so that any text can stand there.
std::string quoted(const std::string &text) {
    std::string out = "'";
    for (const char c : text) out += c == '\'' ? std::string("''") : std::string(1, c);
    return out + "'";
}

std::string set_with(const std::string &condition) {
    return "set: s\ntitle: t\nedition: e\nunits: in\nclasses: [A]\n"
           "quantities: {thickness: thinner member, diameter: outside diameter}\nrules:\n"
           "  - id: r\n    types: crack\n    exams: VT\n    allowed: none\n    clause: c\n    standing: "
           "{house: x}\n"
           "    when: " +
           condition + "\n";
}

std::string rules_with(const std::string &condition) {
    return "rules: r\ntitle: t\nedition: e\nunits: in\nvariables: [joint]\nranges:\n"
           "  - id: a\n    of: joint\n    allows: any\n    clause: c\n    standing: {house: x}\n"
           "    test: " +
           condition + "\nvalidity: [{id: v, use every: 6 months, clause: c, standing: {house: x}}]\n";
}

std::string practice_with(const std::string &condition) {
    return "practice: p\ntitle: t\nedition: e\nmethod: VT\nrules:\n"
           "  - id: a\n    clause: c\n    standing: {house: x}\n    must: " +
           condition + "\n";
}

/// A groove in a plate of 1/4 in; its diameter is not known.
const Weld &weld() {
    static const Weld out = [] {
        Weld w;
        w.word(Trait::joint) = "groove";
        w.word(Trait::form) = "plate";
        w.size(Trait::thickness) = Exact(nm_per_inch) / Exact(4);
        return w;
    }();
    return out;
}

Coupon coupon() {
    Coupon c;
    c.facts[static_cast<std::size_t>(Fact::joint)] = word_index(info(Fact::joint), "groove");
    c.facts[static_cast<std::size_t>(Fact::form)] = word_index(info(Fact::form), "plate");
    c.values.set(Quantity::thinner, Exact(nm_per_inch / 4));
    return c;
}

Truth in_set(const std::string &text) {
    const auto set = set_from(set_with(quoted(text)));
    Missing missing;
    return holds_for(set->rules[0].when, coupon(), {}, {}, missing);
}

Truth in_rules(const std::string &text) {
    const auto loaded = load_range_rules(rules_with(quoted(text)));
    INFO(text << (loaded.issues.empty() ? "" : ": " + loaded.issues.front().text));
    REQUIRE(loaded.rules);
    return passes(loaded.rules->rules[0].test, weld());
}

Truth in_practice(const std::string &text) {
    const auto loaded = load_practice(practice_with(quoted(text)));
    INFO(text << (loaded.issues.empty() ? "" : ": " + loaded.issues.front().text));
    REQUIRE(loaded.practice);
    const ExamCheck check = check_exam(*loaded.practice, {}, parse_day("2026-11-25"), coupon());
    REQUIRE(check.findings.size() == 1);
    return check.findings[0].holds;
}

/// "9: '...'": the only refusal, and its column in the condition's own text.
std::string refusal(const std::vector<Issue> &issues, const std::string &file, const std::string &key) {
    REQUIRE(issues.size() == 1);
    std::istringstream lines(file);
    std::string line;
    for (int n = 0; n < issues[0].where.line; ++n) std::getline(lines, line);
    REQUIRE(line.find(key + ": '") != std::string::npos);
    const auto begin = static_cast<int>(line.find(key + ": '") + key.size() + 3) + 1;
    return std::to_string(issues[0].where.column - begin) + ": " + issues[0].text;
}

} // namespace

TEST_CASE("a condition reads the same in a set, in rules for welders and in a practice") {
    const Truth yes = Truth::yes, no = Truth::no, unknown = Truth::unknown;
    const std::vector<std::pair<std::string, Truth>> rows{
        {"joint is groove", yes},
        {"joint is fillet", no},
        {"joint is fillet or groove", yes},
        {"joint is not groove", no},
        {"joint is not fillet", yes},
        {"joint is not fillet or plug", yes},
        {"joint is not groove or plug", no},
        {"form is plate", yes},
        {"form is not tube or sheet", yes},
        {"thickness over 1/4 in", no},
        {"thickness at least 1/4 in", yes},
        {"thickness from 1/4 in", yes},
        {"thickness under 1/4 in", no},
        {"thickness below 1/4 in", no},
        {"thickness up to 1/4 in", yes},
        {"thickness to 1/4 in", yes},
        {"thickness at most 1/4 in", yes},
        {"thickness at most 0.2499999 in", no},
        {"thickness over 1/8 in to 1/4 in", yes},
        {"thickness from 1/8 in below 1/4 in", no},
        {"thickness at most 6.35 mm", yes},
        {"thickness at least 250 mil", yes},
        {"thickness from 6350 um to 6350 \u00b5m", yes},
        {"thickness at most 1/4\"", yes},
        {"thickness at most lesser of 1/4 in and 8 mm", yes},
        {"thickness at most greater of 1/8 in and 6 mm", no},
        {"thickness at least 2 x 1/8 in", yes},
        {"thickness at least 50 % x (1 in - 1/2 in)", yes},
        {"thickness at least 1/4 in or 6.5 mm", yes},
        {"thickness at least 6.5 mm or 1/4 in", yes},
        {"thickness at most 6 mm or 1/4 in", yes},
        {"thickness at most 0.24 in or 6.3 mm", no},
        {"thickness over 1/4 in or 6.35 mm", no},
        {"thickness from 1/8 in or 3 mm under 1/4 in or 6.5 mm", yes},
        {"diameter over 1 in", unknown},
        {"diameter at most 1 in", unknown},
        {"diameter from 0 in", unknown},
    };
    for (const auto &[text, expected] : rows) {
        INFO(text);
        CHECK(in_set(text) == expected);
        CHECK(in_rules(text) == expected);
        CHECK(in_practice(text) == expected);
    }
}

TEST_CASE("a denied word that nobody told stays unknown") {
    const std::string text = "joint is not fillet";
    Missing missing;
    const auto set = set_from(set_with(text));
    CHECK(holds_for(set->rules[0].when, {}, {}, {}, missing) == Truth::unknown);
    CHECK(missing == lack_of(Fact::joint));
    CHECK(passes(load_range_rules(rules_with(text)).rules->rules[0].test, {}) == Truth::unknown);
    const auto practice = load_practice(practice_with(text)).practice;
    const ExamCheck check = check_exam(*practice, {}, parse_day("2026-11-25"), {});
    CHECK(check.valid == Truth::unknown);
    CHECK(check.why_not() == "cannot be called valid without joint");
}

TEST_CASE("a condition is refused alike in a set, in rules for welders and in a practice") {
    const std::vector<std::pair<std::string, std::string>> rows{
        {"joint is groov", "9: 'groov' is no joint; expected groove, fillet or plug; did you mean 'groove'?"},
        {"joint is groove or fillt",
         "19: 'fillt' is no joint; expected groove, fillet or plug; did you mean 'fillet'?"},
        {"joint is not fillt",
         "13: 'fillt' is no joint; expected groove, fillet or plug; did you mean 'fillet'?"},
        {"joint is", "8: found the end; expected groove, fillet or plug"},
        {"joint is not", "12: found the end; expected groove, fillet or plug"},
        {"joint groove", "6: expected 'is' and a word"},
        {"joint at least 1 in", "6: expected 'is' and a word"},
        {"joint is groove fillet", "16: found 'fillet' where the condition should end"},
        {"thickness", "9: expected a comparison: over, at least, from, under, below, up to, to or at most"},
        {"thickness is 1 in",
         "10: expected a comparison: over, at least, from, under, below, up to, to or at most"},
        {"thickness over 1", "15: compares a length with a number; a unit is missing"},
        {"thickness over 1 s", "15: compares a length with a time"},
        {"thickness over 20 \u00b0C", "15: compares a length with a temperature"},
        {"thickness over 1 in x 2 in x 3 in", "27: multiplies an area by a length"},
        {"thickness over 1 in + 3", "20: adds a length and a number"},
        {"thickness over lesser of 1 in", "29: expected 'and' and a second value"},
        {"thickness over lesser of 1 in and 2 h", "34: chooses between a length and a time"},
        {"thickness over (1 in", "20: a bracket is not closed"},
        {"thickness over joint", "15: 'joint' is a word; a number is expected here"},
        {"thickness over table none", "21: there is no table 'none'; none is read yet"},
        {"thickness over 1 \u00b5m and more", "20: found 'and more' where the condition should end"},
        {"thickness over 1 in or", "20: found 'or' where the condition should end"},
        {"thickness over 1 in or 25",
         "23: expected the same value in the other unit, as in 1/16 in or 1.6 mm"},
        {"thickness over 1 in or 1 ft",
         "23: expected the same value in the other unit, as in 1/16 in or 1.6 mm"},
        {"thickness over 1 in or 25 kg",
         "23: expected the same value in the other unit, as in 1/16 in or 1.6 mm"},
        {"thickness over 1 in or 40 mm", "23: the two differ too much to be one value in two units"},
        {"thickness over 1/0 in", "16: a fraction cannot have 0 below the line"},
    };
    for (const auto &[text, expected] : rows) {
        INFO(text);
        const std::string set = set_with(quoted(text)), rules = rules_with(quoted(text)),
                          practice = practice_with(quoted(text));
        CHECK(refusal(load_criteria(set).issues, set, "when") == expected);
        CHECK(refusal(load_range_rules(rules).issues, rules, "test") == expected);
        CHECK(refusal(load_practice(practice).issues, practice, "must") == expected);
    }
    // An unknown name is told with what is known there, which is each file's own.
    const std::string text = quoted("thicknes over 1 in");
    for (const auto &issues :
         {load_criteria(set_with(text)).issues, load_range_rules(rules_with(text)).issues,
          load_practice(practice_with(text)).issues}) {
        REQUIRE(issues.size() == 1);
        CHECK_THAT(issues[0].text, says("found 'thicknes'; expected a number with its unit"));
        CHECK_THAT(issues[0].text, says("; did you mean 'thickness'?"));
    }
}

TEST_CASE("the short maps of rules for welders are the same conditions, refused in the same words") {
    const std::vector<std::pair<std::string, Truth>> rows{
        {"{joint: groove, form: [sheet, plate]}", Truth::yes},
        {"{joint: groove or fillet}", Truth::yes},
        {"{joint: not groove}", Truth::no},
        {"{form: not tube, thickness: over 1/8 in to 1/4 in}", Truth::yes},
        {"[{form: tube}, {thickness: under 1 in}]", Truth::yes},
        {"[form is not tube, thickness under 1/8 in]", Truth::no},
        {"{form: not tube, diameter: over 1 in}", Truth::unknown},
    };
    for (const auto &[filter, expected] : rows) {
        const auto loaded = load_range_rules(rules_with(filter));
        INFO(filter << (loaded.issues.empty() ? "" : ": " + loaded.issues.front().text));
        REQUIRE(loaded.rules);
        CHECK(passes(loaded.rules->rules[0].test, weld()) == expected);
    }
    const auto said = [](const std::string &filter) {
        return load_range_rules(rules_with(filter)).rules->rules[0].test.text;
    };
    CHECK(said("{joint: groove, form: [sheet, plate]}") == "joint groove, form sheet or plate");
    CHECK(said("[joint is groove, form is not tube]") == "joint is groove, form is not tube");
    CHECK(said("[{form: tube}, {thickness: under 1 in}]") == "form tube; or thickness under 1 in");
    const std::vector<std::pair<std::string, std::string>> broken{
        {"{joint: groov}", "'groov' is no joint; expected groove, fillet or plug; did you mean 'groove'?"},
        {"{joint: [groove, fillt]}",
         "'fillt' is no joint; expected groove, fillet or plug; did you mean 'fillet'?"},
        {"{thickness: over 1}", "compares a length with a number; a unit is missing"},
        {"{thickness: thin}",
         "expected a comparison: over, at least, from, under, below, up to, to or at most"},
        {"{thickness: over diameter}", "the edge of a band must be a plain number"},
        {"thickness over 2 x diameter", "the edge of a band must be a plain number"},
        {"2 x thickness over 1 in", "asks about no size of the weld alone"},
        {"[{form: tube}, form is plate]", "found a condition among maps"},
    };
    for (const auto &[filter, expected] : broken) {
        const auto issues = load_range_rules(rules_with(filter)).issues;
        INFO(filter);
        REQUIRE(issues.size() == 1);
        CHECK_THAT(issues[0].text, says(expected));
    }
}

TEST_CASE("days, and words that themselves begin with not") {
    const auto says_of = [](const std::string &must, const std::map<std::string, std::string> &conditions) {
        const auto loaded = load_practice(practice_with(must));
        INFO(must << (loaded.issues.empty() ? "" : ": " + loaded.issues.front().text));
        REQUIRE(loaded.practice);
        return check_exam(*loaded.practice, conditions, parse_day("2026-11-25"), coupon()).valid;
    };
    CHECK(says_of("certificate not past", {{"certificate", "2026-11-25"}}) == Truth::yes);
    CHECK(says_of("certificate not past", {{"certificate", "2026-11-24"}}) == Truth::no);
    CHECK(says_of("vision within 6 months", {{"vision", "2026-05-25"}}) == Truth::yes);
    CHECK(says_of("vision within 6 months", {{"vision", "2026-05-24"}}) == Truth::no);
    CHECK(says_of("vision within 6 months", {}) == Truth::unknown);
    CHECK(says_of("letter B is not seen or darker", {{"letter B", "not seen"}}) == Truth::yes);
    CHECK(says_of("letter B is not seen or darker", {{"letter B", "lighter"}}) == Truth::no);
    CHECK(says_of("letter B is not not seen", {{"letter B", "not seen"}}) == Truth::no);
    CHECK(says_of("letter B is not lighter", {{"letter B", "not seen"}}) == Truth::yes);
    CHECK(says_of("demagnetizing is not needed", {{"demagnetizing", "not needed"}}) == Truth::yes);
    // Words of people's own, and arithmetic on the left.
    CHECK(says_of("aids is not borescope", {{"aids", "mirror"}}) == Truth::yes);
    CHECK(says_of("2 x spacing at most 12 in", {{"spacing", "6 in"}}) == Truth::yes);
    CHECK(says_of("2 x spacing at most 12 in", {{"spacing", "6.001 in"}}) == Truth::no);
    CHECK(says_of("temperature from -10 C below 20 \u00b0C", {{"temperature", "14 F"}}) == Truth::yes);
    CHECK(says_of("temperature from -10 C below 20 \u00b0C", {{"temperature", "68 F"}}) == Truth::no);
    // A set names no days.
    CHECK_FALSE(load_criteria(set_with("certificate not past")).set);
}

TEST_CASE("names of a set: a symbol may hide a measure, never a word") {
    const auto with = [](const std::string &symbols) {
        return load_criteria("set: s\ntitle: t\nedition: e\nunits: in\nclasses: [A]\nquantities: " + symbols +
                             "\nrules:\n  - {id: r, types: crack, exams: VT, allowed: none, clause: c, "
                             "standing: {house: x}}\n");
    };
    CHECK(with("{width: weld width}").set);
    CHECK_THAT(with("{joint: weld width}").issues.at(0).text, says("'joint' is the name of something else"));
    CHECK_THAT(with("{side: weld width}").issues.at(0).text, says("'side' is the name of something else"));
}
