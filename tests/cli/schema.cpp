#include "schema.hpp"

#include "temporary.hpp"

#include <map>
#include <memory>
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

nlohmann::json read_schema(const std::string &name) {
    return nlohmann::json::parse(read_file(folder + name));
}

/// Parts that other schemas share are taken into the schema itself, and references to them turned inward.
void take_in(nlohmann::json &part, nlohmann::json &definitions) {
    if (!part.is_structured()) return;
    if (part.is_object() && part.contains("$ref")) {
        const auto ref = part["$ref"].get<std::string>();
        const std::size_t hash = ref.find('#');
        if (hash != 0 && hash != std::string::npos) {
            auto shared = read_schema(ref.substr(0, hash))["definitions"];
            for (auto &[name, one] : shared.items()) {
                if (definitions.contains(name)) continue;
                definitions[name] = one;
                take_in(definitions[name], definitions);
            }
            part["$ref"] = ref.substr(hash);
        }
    }
    for (auto &inner : part) take_in(inner, definitions);
}

/// A shape may grow, so a schema lets more keys pass than it knows. Here each must be described.
void close(nlohmann::json &part) {
    if (!part.is_structured()) return;
    for (auto &inner : part) close(inner);
    if (part.is_object() && part.contains("properties") && !part.contains("additionalProperties"))
        part["additionalProperties"] = false;
}

std::unique_ptr<valijson::Schema> made_of(const std::string &command) {
    nlohmann::json text = read_schema(command + ".json");
    nlohmann::json definitions = text.value("definitions", nlohmann::json::object());
    take_in(text, definitions);
    take_in(definitions, definitions);
    text["definitions"] = definitions;
    close(text);
    auto out = std::make_unique<valijson::Schema>();
    valijson::SchemaParser().populateSchema(valijson::adapters::NlohmannJsonAdapter(text), *out);
    return out;
}

/// Kept, as making one takes longer than holding a document against it.
const valijson::Schema &schema_of(const std::string &command) {
    static std::map<std::string, std::unique_ptr<valijson::Schema>> made;
    auto &one = made[command];
    if (!one) one = made_of(command);
    return *one;
}

} // namespace

std::string schema_faults(const std::string &command, const std::string &json) {
    const valijson::Schema &schema = schema_of(command);
    const nlohmann::json document = nlohmann::json::parse(json);
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
