// criteria, rules and practice print JSON as their schemas say, for every verb and everything that is
// shipped.
#include "catch.hpp"
#include "cli/json.hpp"

#include <functional>

using namespace beadbook::test;

namespace {

/// Nothing but the JSON is said, on standard error neither.
nlohmann::json json_alone(const Program &run, std::vector<std::string> words, int code = 0,
                          const std::string &input = "") {
    auto out = json(run, words, code, input);
    words.push_back("--json");
    CHECK(run(words, input).err.empty());
    return out;
}

/// One blank in place of several and of breaks.
std::string on_one_line(const std::string &text) {
    std::string out;
    for (const char c : text)
        if (c != ' ' && c != '\n')
            out += c;
        else if (!out.empty() && out.back() != ' ')
            out += ' ';
    return out;
}

/// Each text below it, but for names of types and classes, which the sheet puts together.
void each_text(const nlohmann::json &of, const std::function<void(const std::string &)> &take) {
    if (of.is_string()) take(of.get<std::string>());
    if (of.is_array())
        for (const auto &one : of) each_text(one, take);
    if (!of.is_object()) return;
    for (const auto &[key, value] : of.items())
        if (key != "types" && key != "classes" && key != "exact") each_text(value, take);
}

} // namespace

TEST_CASE("all that the JSON of a set says stands on its sheet too", "[catalogue][long]") {
    const Program run;
    std::size_t told = 0, proportion = 0, of_rules = 0, conditions = 0;
    std::vector<std::string> names{BEADBOOK_SOURCE "/demo/criteria/training-shop.yaml"};
    for (const auto &one : json(run, {"criteria", "list"})) names.push_back(one["set"]);
    for (const auto &name : names) {
        const std::string sheet = on_one_line(run.ok({"criteria", "show", name}));
        const auto set = json(run, {"criteria", "show", name});
        INFO(name);
        each_text(set, [&](const std::string &text) {
            INFO(text);
            CHECK(sheet.find(on_one_line(text)) != std::string::npos);
            ++told;
        });
        for (const auto &rule : set["rules"]) {
            proportion += rule.contains("in proportion on a shorter weld");
            of_rules += rule.contains("of the rules");
            CHECK(rule.contains("types") == rule.contains("exams"));
        }
        REQUIRE(set["gaps in full"].size() == set["gaps"].size());
        for (const auto &gap : set["gaps in full"]) conditions += gap.contains("conditions");
    }
    CHECK(told > 5000);
    CHECK(proportion > 0);
    CHECK(of_rules > 0);
    CHECK(conditions > 0);
}

TEST_CASE("JSON of criteria sets: list, types, show, check", "[catalogue][long]") {
    const Program run;
    const auto list = json_alone(run, {"criteria", "list"});
    CHECK(list.size() > 5);
    for (const auto &one : list) {
        const auto set = json_alone(run, {"criteria", "show", one["set"]});
        CHECK(set["hash"] == one["hash"]);
        CHECK(set["rules"].size() == one["rules"]);
        for (const auto &rule : set["rules"]) CHECK(rule["limits"].size() == one["classes"].size());
    }
    const auto set = json_alone(run, {"criteria", "show", "mil-hdbk-1890-table-3"});
    CHECK_FALSE(set["required exams"].empty());
    const auto types = json_alone(run, {"criteria", "types"});
    const auto pore =
        std::find_if(types.begin(), types.end(), [](const auto &t) { return t["name"] == "gas pore"; });
    REQUIRE(pore != types.end());
    CHECK((*pore)["iso 6520-1"] == "2011");
    CHECK((*pore)["under"] == "porosity");

    const auto good = json_alone(run, {"criteria", "check", "iso-5817", "--coverage"});
    CHECK(good["holds"] == true);
    CHECK(good["always cannot say"].contains("RT"));
    const auto bad = json_alone(run, {"criteria", "check", "-"}, 3, "set: x\ntitle: y\n");
    CHECK(bad["holds"] == false);
    CHECK_FALSE(bad.contains("rules"));
    CHECK(bad["issues"][0]["severity"] == "error");
    CHECK_THAT(bad.dump(), says("'units' is missing"));
}

TEST_CASE("JSON of the owner's copy: blanks, fill, confirm, withdraw", "[catalogue]") {
    const Program run;
    run({"person", "A. Field", "--role", "keeper"}); // begins the record, and says so
    const auto copy = [&](std::vector<std::string> words) {
        words.insert(words.begin(), "copy");
        words.insert(words.end(), {"--by", "A. Field"});
        return json(run, words);
    };
    const std::vector<std::string> from{"--edition", "AWS D17.1:2017", "--page", "21", "--second", "B. Reed"};
    const auto with = [&](std::vector<std::string> words) {
        words.insert(words.end(), from.begin(), from.end());
        return words;
    };
    const auto filled =
        copy(with({"fill", "aws-d17.1", "mismatch", "0.03 in", "--class", "A", "--class", "B"}));
    CHECK(filled["filled"].size() == 2);
    CHECK(filled["filled"][0]["exact"] == "762000");
    CHECK(filled["still open"] == nlohmann::json{"C"});
    const auto confirmed = copy(with({"confirm", "aws-d17.1", "undercut-depth", "--class", "B"}));
    CHECK(confirmed["confirmed"][0]["read"]["second"] == "B. Reed");
    const auto sheet = json(run, {"copy", "blanks", "aws-d17.1"});
    CHECK(sheet["open"] == 10);
    CHECK(sheet["blanks"].size() == 4);
    CHECK(sheet["confirmed"].size() == 1);
    CHECK(json(run, {"copy", "blanks"}).size() == 2);
    const auto set = json(run, {"criteria", "show", "aws-d17.1"});
    for (const auto &rule : set["rules"])
        if (rule["id"] == "undercut-depth") {
            CHECK(rule["limits"]["B"]["confirmed"] ==
                  "confirmed by A. Field (page 21, edition AWS D17.1:2017, countersigned by B. Reed)");
            CHECK_FALSE(rule["limits"]["A"].contains("confirmed"));
        }
    for (const auto &blank : set["blanks"])
        if (blank["id"] == "mismatch") {
            CHECK(blank["open"] == nlohmann::json{"C"});
            CHECK(blank["filled"]["A"]["value"]["text"] == "0.03 in");
        }
    // What the record holds of the copy is compared; what is open is told as blank.
    copy(with({"fill", "aws-d17.1", "reinforcement", "0.05 in", "--class", "A"}));
    bool seen = false;
    const auto beside = json(run, {"criteria", "compare", "aws-d17.1", "--class", "A", "--as-class", "C"});
    for (const auto &thing : beside["compared"][0]["things"])
        if (thing["measure"] == "height" && thing["types"][0] == "excess weld metal") {
            const auto &at = thing["thickness"][0];
            CHECK(at["first"]["as written"] == "0.05 in");
            CHECK(at["second"]["says"] == "blank");
            CHECK(at["first is"] == "cannot say");
            seen = true;
        }
    CHECK(seen);
    const auto withdrawn =
        copy({"withdraw", "aws-d17.1", "mismatch", "--class", "A", "--why", "the wrong row"});
    CHECK(withdrawn["was"] == "filled");
    CHECK(withdrawn["classes"] == nlohmann::json{"A"});
}

TEST_CASE("JSON of both sides of each limit, and the schemas that editors use", "[catalogue]") {
    const Program run;
    const auto all = json_alone(run, {"criteria", "cases", "aws-d17.1", "--boundaries"});
    CHECK(all["judged otherwise"] == 0);
    CHECK(all["boundaries"].size() > 50);
    CHECK(all.contains("not tried from both sides"));
    CHECK(run({"criteria", "cases", "--boundaries"}).code == 2);
    const Run text = run({"criteria", "cases", "aws-d17.1", "--boundaries"});
    CHECK(text.code == 0);
    CHECK_THAT(text.out, says("surface-pore-size: Size of a surface pore"));
    CHECK_THAT(text.out, says("0 of them judged otherwise than written"));
    for (const char *kind : {"criteria", "cases", "rules", "practice", "work"}) {
        const Run schema = run({"criteria", "schema", kind});
        CHECK(schema.code == 0);
        CHECK(nlohmann::json::parse(schema.out)["type"] == "object");
    }
    CHECK_THAT(run({"criteria", "schema", "case"}).err, says("did you mean 'cases'?"));
}

TEST_CASE("JSON of rules for welders: list, show, check", "[catalogue]") {
    const Program run;
    const auto list = json_alone(run, {"rules", "list"});
    CHECK(list.size() == 6);
    for (const auto &one : list) {
        const auto rules = json_alone(run, {"rules", "show", one["rules"]});
        CHECK(rules["hash"] == one["hash"]);
        CHECK_FALSE(rules["variables"].empty());
        CHECK_FALSE(rules["ranges"].empty());
        CHECK_FALSE(rules["validity"].empty());
        CHECK(json_alone(run, {"rules", "check", one["rules"]})["ranges"] == rules["ranges"].size());
    }
    const auto asme = json_alone(run, {"rules", "show", "asme-ix"});
    CHECK(asme["validity"][0]["use every"] == "6 months");
    CHECK(asme["renewal"]["coupons"] == 1);
    CHECK(json_alone(run, {"rules", "check", "-"}, 3, "rules: x\n")["holds"] == false);
}

TEST_CASE("JSON of practices: list, conditions, show, check", "[catalogue]") {
    const Program run;
    const auto list = json_alone(run, {"practice", "list"});
    CHECK(list.size() > 8);
    for (const auto &one : list) {
        const auto practice = json_alone(run, {"practice", "show", one["practice"]});
        CHECK(practice["method"] == one["method"]);
        CHECK(json_alone(run, {"practice", "check", one["practice"]})["rules"] == practice["rules"].size());
    }
    const auto conditions = json_alone(run, {"practice", "conditions"});
    const auto light = std::find_if(conditions.begin(), conditions.end(),
                                    [](const auto &c) { return c["name"] == "light"; });
    REQUIRE(light != conditions.end());
    CHECK((*light)["methods"] == std::vector<std::string>{"VT", "MT", "PT"});
    CHECK(json_alone(run, {"practice", "check", "-"}, 3, "practice: p\n")["holds"] == false);
}
