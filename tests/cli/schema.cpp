#include "schema.hpp"

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

namespace beadbook::test {
namespace {

const std::string folder = BEADBOOK_SOURCE "/src/render/schemas/";

/// A shape may grow, so most schemas let more keys pass than they know. Here each must be described.
void close(nlohmann::json &schema) {
    if (!schema.is_structured()) return;
    for (auto &part : schema) close(part);
    if (schema.is_object() && schema.contains("properties") && !schema.contains("additionalProperties"))
        schema["additionalProperties"] = false;
}

nlohmann::json read_schema(const std::string &name) {
    auto out = nlohmann::json::parse(read_file(folder + name));
    close(out);
    return out;
}

/// Files that a schema refers to lie beside it.
const nlohmann::json *fetch(const std::string &name) { return new nlohmann::json(read_schema(name)); }
void release(const nlohmann::json *json) { delete json; }

} // namespace

std::string schema_faults(const std::string &command, const std::string &json) {
    const nlohmann::json text = read_schema(command + ".json");
    const nlohmann::json document = nlohmann::json::parse(json);
    valijson::Schema schema;
    valijson::SchemaParser().populateSchema(valijson::adapters::NlohmannJsonAdapter(text), schema, fetch,
                                            release);
    valijson::ValidationResults results;
    if (valijson::Validator().validate(schema, valijson::adapters::NlohmannJsonAdapter(document), &results))
        return "";
    std::string out = command + ":";
    for (valijson::ValidationResults::Error error; results.popError(error);) {
        out += "\n  ";
        for (const auto &step : error.context) out += step;
        out += ": " + error.description;
    }
    return out;
}

} // namespace beadbook::test

#else
namespace beadbook::test {
std::string schema_faults(const std::string &, const std::string &) { return ""; }
} // namespace beadbook::test
#endif
