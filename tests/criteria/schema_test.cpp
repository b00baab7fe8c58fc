// The JSON Schema that editors use must accept what the loader accepts, and refuse what is plainly broken.
#include "catch.hpp"
#include "criteria/load.hpp"
#include "criteria/shipped.hpp"
#include "language/yaml.hpp"
#include "temporary.hpp"

#include <nlohmann/json.hpp>

#if __has_include(<valijson/validator.hpp>)
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wall"
#pragma GCC diagnostic ignored "-Wextra"
#pragma GCC diagnostic ignored "-Wconversion"
#pragma GCC diagnostic ignored "-Wpedantic"
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validator.hpp>
#pragma GCC diagnostic pop

using namespace beadbook;
using namespace beadbook::test;

namespace {

nlohmann::json json_of(const Yaml &yaml) {
    if (yaml.kind == Yaml::Kind::scalar) return yaml.text;
    nlohmann::json out = yaml.kind == Yaml::Kind::list ? nlohmann::json::array() : nlohmann::json::object();
    for (const auto &item : yaml.items) out.push_back(json_of(item));
    for (const auto &entry : yaml.entries) out[entry.key] = json_of(entry.value);
    return out;
}

bool accepts(const std::string &yaml) {
    static const auto schema = [] {
        static const nlohmann::json text =
            nlohmann::json::parse(read_file(BEADBOOK_SOURCE "/criteria/criteria.schema.json"));
        auto out = std::make_unique<valijson::Schema>();
        valijson::SchemaParser().populateSchema(valijson::adapters::NlohmannJsonAdapter(text), *out);
        return out;
    }();
    Issues issues;
    const nlohmann::json document = json_of(read_yaml(yaml, issues));
    REQUIRE(issues.all().empty());
    return valijson::Validator().validate(*schema, valijson::adapters::NlohmannJsonAdapter(document),
                                          nullptr);
}

const std::string rule = "  - {id: r, types: porosity, exams: RT, measure: size, at most: 1/16 in, clause: "
                         "c, standing: {house: x}}\n";
const std::string schema_head = "set: s\ntitle: t\nedition: e\nunits: in\nclasses: [A]\n";

} // namespace

TEST_CASE("the schema accepts every shipped set and the demonstration's") {
    for (const auto &name : shipped_sets()) {
        INFO(name);
        CHECK(accepts(shipped_file(name + ".yaml")));
    }
    CHECK(accepts(read_file(BEADBOOK_SOURCE "/demo/criteria/training-shop.yaml")));
    CHECK(accepts(schema_head + "rules:\n" + rule));
}

TEST_CASE("the schema refuses broken sets, and so does the loader") {
    const auto with = [&](const std::string &from, const std::string &to) {
        std::string text = schema_head + "rules:\n" + rule;
        const std::size_t at = text.find(from);
        REQUIRE(at != std::string::npos);
        return text.replace(at, from.size(), to);
    };
    const std::vector<std::string> broken{
        "[]\n",
        schema_head,
        schema_head + "rules: []\n",
        with("units: in", "units: inch"),
        with("classes: [A]", "classes: []"),
        with("classes: [A]", "class: [A]"),
        with("set: s\n", ""),
        with("edition: e", "editon: e"),
        with("exams: RT", "exams: UT"),
        with("exams: RT", "exams: {a: b}"),
        with("exams: RT, ", ""),
        with("rules:",
             "relevance: [{id: a, types: any, ignore: size under 1 in, clause: c, standing: {house: "
             "x}}]\nrules:"),
        with("rules:", "merge: [{id: a, types: any, when: gap under 1 in, clause: c, standing: {house: "
                       "x}}]\nrules:"),
        with("at most: 1/16 in", "at moost: 1/16 in"),
        with("at most: 1/16 in", "at most: 1/16 in, at least: 1/32 in"),
        with("measure: size, at most: 1/16 in", "allowed: perhaps"),
        with("measure: size, at most: 1/16 in", "measure: size, allowed: none"),
        with("measure: size, at most: 1/16 in", "measure: size"),
        with("{house: x}", "{heard: x}"),
        with("{house: x}", "{house: x, read: y}"),
        with(", clause: c", ""),
        with(", standing: {house: x}", ""),
        with("id: r, ", ""),
        with("types: porosity, ", ""),
        with("measure: size", "shape: square, measure: size"),
        with("measure: size", "measure: count, linked: size over 1 in"),
        with("rules:", "ordered: maybe\nrules:"),
        with("rules:", "quantities: {T: fattest member}\nrules:"),
        with("rules:", "tables: {t: {rows: {up to 1 in: 1 in}}}\nrules:"),
        with("rules:", "linear: {when: length over 3 x width}\nrules:"),
        with("rules:", "gaps: [{types: crack}]\nrules:"),
    };
    CHECK(broken.size() >= 20);
    for (const auto &text : broken) {
        INFO(text);
        CHECK_FALSE(accepts(text));
        CHECK(load_criteria(text).set == nullptr);
    }
}

#endif
