// The schemas for editors list words that the program keeps in tables; and what they are to refuse is broken.
#include "catch.hpp"
#include "criteria/doubts.hpp"
#include "criteria/load.hpp"
#include "criteria/quantity_name.hpp"
#include "facts/worked_case.hpp"
#include "qualify/range_rules.hpp"
#include "qualify/trait.hpp"
#include "qualify/work.hpp"
#include "technique/practice.hpp"
#include "temporary.hpp"

#include <filesystem>
#include <nlohmann/json.hpp>

using namespace beadbook;
using namespace beadbook::test;

namespace {

using Words = std::vector<std::string>;

nlohmann::json editor_schema(const std::string &kind) {
    return nlohmann::json::parse(read_file(BEADBOOK_SOURCE "/criteria/" + kind + ".schema.json"));
}

Words keys_of(const nlohmann::json &object) {
    Words out;
    for (const auto &[key, value] : object.items()) out.push_back(key);
    return out;
}

Words sorted(Words words) {
    std::sort(words.begin(), words.end());
    return words;
}

bool loads(const std::string &kind, const std::string &text) {
    const auto criteria = [](const std::string &name) { return shipped_criteria(name); };
    if (kind == "criteria") return load_criteria(text).set != nullptr;
    if (kind == "cases") return load_worked_cases(text, criteria).cases.has_value();
    if (kind == "rules") return load_range_rules(text).rules != nullptr;
    if (kind == "practice") return load_practice(text).practice != nullptr;
    return load_work(text, "", shipped_range_rules).work.has_value();
}

} // namespace

TEST_CASE("the schemas list what the program's tables list") {
    const auto criteria = editor_schema("criteria"), cases = editor_schema("cases");
    const auto rules = editor_schema("rules"), work = editor_schema("work");
    CHECK(criteria["properties"]["silence"]["items"]["properties"]["check"]["enum"].get<Words>() ==
          check_names());
    Words quantities;
    for (std::size_t q = 0; q < coupon_quantities; ++q)
        quantities.emplace_back(info(static_cast<Quantity>(q)).name);
    CHECK(criteria["properties"]["quantities"]["additionalProperties"]["enum"].get<Words>() == quantities);
    CHECK(rules["properties"]["quantities"]["additionalProperties"]["enum"].get<Words>() == quantities);

    const auto &coupon = cases["definitions"]["coupon"]["properties"];
    Words fields;
    for (const auto &field : coupon_fields()) {
        fields.push_back(field.name);
        INFO(field.name);
        if (field.kind == CouponField::Kind::fact)
            CHECK(coupon[field.name]["enum"].get<Words>() == info(field.fact).words);
    }
    CHECK(keys_of(coupon) == sorted(fields));
    CHECK(cases["definitions"]["exam"]["enum"].get<Words>() == exam_names());

    CHECK(rules["definitions"]["trait"]["enum"].get<Words>() == trait_names());
    CHECK(rules["properties"]["base metals"]["oneOf"][0]["enum"].get<Words>() == info(Fact::material).words);
    Words job = trait_names();
    for (const char *more : {"id", "class", "magnetic", "also"}) job.emplace_back(more);
    CHECK(keys_of(work["properties"]["work"]["items"]["properties"]) == sorted(job));
}

TEST_CASE("every schema is written for 2020") {
    for (const char *kind : {"criteria", "cases", "rules", "practice", "work"})
        CHECK(editor_schema(kind)["$schema"] == "https://json-schema.org/draft/2020-12/schema");
}

TEST_CASE("the files that the schemas are tried on are broken") {
    std::size_t seen = 0;
    for (const auto &entry : std::filesystem::directory_iterator(BEADBOOK_SOURCE "/tests/schemas/broken")) {
        const std::string name = entry.path().filename();
        INFO(name);
        CHECK_FALSE(loads(name.substr(0, name.find('-')), read_file(entry.path())));
        ++seen;
    }
    CHECK(seen >= 50);
}
